package bootmend.gui.model;

import bootmend.CardException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;

/**
 * Does work with cards one piece after the other, off the screen's thread, and brings each result back to it.
 *
 * <p>One piece at a time is on purpose: on some systems a program that closes one of two handles of a file gives up the
 * lock it holds through the other, so a card must never be read while it is being changed.
 */
public final class WorkQueue {

    private final Executor worker;
    private final Executor screen;
    private final Deque<Piece<?>> queue = new ArrayDeque<>();
    private final Watched<Optional<String>> busy = new Watched<>(Optional.empty());
    private final Watched<Boolean> canStop = new Watched<>(false);
    private final AtomicBoolean stopping = new AtomicBoolean();
    private Optional<Piece<?>> inWork = Optional.empty();

    /**
     * @param worker runs a piece of work; may be the caller's thread
     * @param screen runs what touches the window
     */
    public WorkQueue(Executor worker, Executor screen) {
        this.worker = worker;
        this.screen = screen;
    }

    /** Work with a card; runs off the screen's thread. */
    @FunctionalInterface
    public interface Work<T> {
        T run() throws CardException;
    }

    /** A piece of work that was handed in. */
    @FunctionalInterface
    public interface Ticket {

        /** Nobody waits for the result any more; a piece that was not begun never is. */
        void drop();
    }

    /** What is in work, in a few words; empty when nothing is. */
    public Watched<Optional<String>> busy() {
        return busy;
    }

    /** Whether what is in work can be stopped: anything but a change to a card. */
    public Watched<Boolean> canStop() {
        return canStop;
    }

    /** Whether what is in work was stopped; devices that are only read ask it before each read, on any thread. */
    public boolean isStopping() {
        return stopping.get();
    }

    /**
     * Stops what is in work and all that waits; each ends with an error that says so.
     *
     * @param why told to those who wait; a change to a card is not stopped
     */
    public void stop(CardException why) {
        List<Piece<?>> waiting = queue.stream().filter(piece -> !piece.change).toList();
        queue.removeAll(waiting);
        if (canStop.get()) {
            inWork.ifPresent(piece -> piece.stopped = Optional.of(why));
            stopping.set(true);
        }
        waiting.forEach(piece -> piece.fail(why).run());
    }

    /** Whether nothing is in work and nothing waits. */
    public boolean isIdle() {
        return inWork.isEmpty() && queue.isEmpty();
    }

    /**
     * Hands in a piece of work, to be done after all that waits.
     *
     * @param words what it is, to show while it lasts
     */
    public <T> Ticket submit(String words, Work<T> work, Consumer<T> done, Consumer<CardException> failed) {
        Piece<T> piece = new Piece<>(words, false, work, done, failed);
        queue.addLast(piece);
        return started(piece);
    }

    /** Hands in a piece of work that someone looks at the window for, to be done before all that waits. */
    public <T> Ticket submitFirst(String words, Work<T> work, Consumer<T> done, Consumer<CardException> failed) {
        Piece<T> piece = new Piece<>(words, false, work, done, failed);
        queue.addFirst(piece);
        return started(piece);
    }

    /** Hands in a change to a card, to be done before all that waits; once begun it is never stopped. */
    public <T> void submitChange(String words, Work<T> work, Consumer<T> done, Consumer<CardException> failed) {
        Piece<T> piece = new Piece<>(words, true, work, done, failed);
        queue.addFirst(piece);
        next();
    }

    private Ticket started(Piece<?> piece) {
        next();
        return () -> {
            piece.dropped = true;
            queue.remove(piece);
        };
    }

    private void next() {
        if (inWork.isPresent()) {
            return;
        }
        if (queue.isEmpty()) {
            busy.set(Optional.empty());
            canStop.set(false);
            return;
        }
        Piece<?> piece = queue.remove();
        inWork = Optional.of(piece);
        stopping.set(false);
        busy.set(Optional.of(piece.words));
        canStop.set(!piece.change);
        worker.execute(() -> {
            Runnable outcome = piece.run();
            screen.execute(() -> {
                inWork = Optional.empty();
                try {
                    outcome.run();
                } finally {
                    next();
                }
            });
        });
    }

    private static final class Piece<T> {

        private final String words;
        private final Work<T> work;
        private final Consumer<T> done;
        private final Consumer<CardException> failed;
        private final boolean change;
        private boolean dropped;
        private Optional<CardException> stopped = Optional.empty();

        Piece(String words, boolean change, Work<T> work, Consumer<T> done, Consumer<CardException> failed) {
            this.words = words;
            this.change = change;
            this.work = work;
            this.done = done;
            this.failed = failed;
        }

        /** Does the work and gives what is to be done with its outcome on the screen's thread. */
        Runnable run() {
            try {
                T result = work.run();
                return () -> {
                    if (stopped.isPresent()) {
                        fail(stopped.get()).run();
                    } else if (!dropped) {
                        done.accept(result);
                    }
                };
            } catch (CardException e) {
                return fail(e);
            } catch (RuntimeException | Error e) {
                return fail(CardException.unreadable(
                        "something unforeseen happened (" + e + ")", "Please report it with what you did.", e));
            }
        }

        private Runnable fail(CardException error) {
            return () -> {
                if (!dropped) {
                    failed.accept(stopped.orElse(error));
                }
            };
        }
    }
}
