package bootmend.cli.run;

import bootmend.batch.CardBatch;
import bootmend.cli.outcome.ExitCode;
import java.io.PrintWriter;
import java.util.concurrent.CountDownLatch;

/**
 * Ends a batch in good order when the process is told to end (Ctrl-C, SIGTERM, a closed window): cards in work are
 * finished, no other is started, and the process ends with the batch's exit code once its answer is written.
 */
public final class BatchStop {

    private final CountDownLatch answered = new CountDownLatch(1);
    private final Thread hook;
    private volatile int code = ExitCode.REFUSED;

    private BatchStop(CardBatch batch, PrintWriter err) {
        this.hook = new Thread(
                () -> {
                    batch.stop();
                    err.println("Stopping: the cards being worked on are finished, no other is started.");
                    err.flush();
                    awaitAnswer();
                    Runtime.getRuntime().halt(code);
                },
                "batch-stop");
    }

    static BatchStop watch(CardBatch batch, PrintWriter err) {
        BatchStop stop = new BatchStop(batch, err);
        Runtime.getRuntime().addShutdownHook(stop.hook);
        return stop;
    }

    /** To be called when the whole answer is written; in a process that is told to end, nothing after it may run. */
    void end(int exitCode) {
        code = exitCode;
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException alreadyEnding) {
            answered.countDown();
        }
    }

    private void awaitAnswer() {
        try {
            answered.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
