package bootmend.cli.run;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Ctrl-C as a wish to stop rather than an end: the process ends only when the work says that it is over. No thread is
 * interrupted, because that would close the card's channel in the middle of a change.
 */
public final class StopSignal implements AutoCloseable {

    private final CountDownLatch asked = new CountDownLatch(1);
    private final CountDownLatch over = new CountDownLatch(1);
    private final Thread hook = new Thread(this::stop, "stop");

    public StopSignal() {
        Runtime.getRuntime().addShutdownHook(hook);
    }

    private void stop() {
        asked.countDown();
        try {
            over.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Waits so long or until the stop is asked for; says whether to go on. */
    public boolean pause(long millis) {
        try {
            return !asked.await(millis, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** The work is over. */
    @Override
    public void close() {
        over.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The process is ending already; the hook has what it waited for.
            return;
        }
    }
}
