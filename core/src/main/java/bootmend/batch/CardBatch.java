package bootmend.batch;

import bootmend.CardException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Does one job on many cards, several at a time, and hands out the results in the cards' order as they come.
 *
 * <p>Whatever fails on one card stays with that card. At most a fixed number of results wait for their turn, so that
 * memory does not grow with the number of cards. A worker is never interrupted: a change that was begun is finished.
 */
public final class CardBatch {

    /** Results per worker that may wait for a slow card before them. */
    private static final int AHEAD = 8;

    private final int jobs;
    private volatile boolean stopped;

    /** @param jobs cards in work at once, 1 or more */
    public CardBatch(int jobs) {
        if (jobs < 1) {
            throw new IllegalArgumentException("at least one card must be in work");
        }
        this.jobs = jobs;
    }

    /** What is done with each card; runs on several threads at once. */
    @FunctionalInterface
    public interface Work<T> {
        T on(Path card) throws CardException;
    }

    /** Lets the cards in work end and starts no other; may be called from any thread. */
    public void stop() {
        stopped = true;
    }

    /**
     * Works on every card and returns when none is in work any more.
     *
     * @param results gets each card's result, on the caller's thread; when it throws, no other card is started
     */
    public <T> void run(List<Path> cards, Work<T> work, Consumer<CardResult<T>> results) {
        ExecutorService workers = Executors.newFixedThreadPool(Math.max(1, Math.min(jobs, cards.size())));
        try {
            Queue<Future<CardResult<T>>> inTurn = new ArrayDeque<>();
            for (Path card : cards) {
                if (inTurn.size() >= jobs * AHEAD) {
                    results.accept(await(inTurn.remove()));
                }
                inTurn.add(workers.submit(() -> one(card, work)));
            }
            while (!inTurn.isEmpty()) {
                results.accept(await(inTurn.remove()));
            }
        } catch (RuntimeException | Error e) {
            stop();
            throw e;
        } finally {
            awaitEnd(workers);
        }
    }

    private <T> CardResult<T> one(Path card, Work<T> work) {
        if (stopped) {
            return CardResult.notStarted(card);
        }
        long start = System.nanoTime();
        try {
            T view = work.on(card);
            return CardResult.of(card, view, since(start));
        } catch (CardException e) {
            return CardResult.failed(card, e, since(start));
        } catch (RuntimeException | Error e) {
            // One card that nobody foresaw, or that asks for more memory than there is, must not keep the others back.
            return CardResult.failed(
                    card,
                    CardException.unreadable(
                            "something unforeseen happened (" + e + ")",
                            "Please report it, and what was to be done.",
                            e),
                    since(start));
        }
    }

    private static Duration since(long start) {
        return Duration.ofNanos(System.nanoTime() - start);
    }

    /** Waits even when this thread is asked to end, because changes under way must be seen to their end. */
    private <T> CardResult<T> await(Future<CardResult<T>> result) {
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return result.get();
                } catch (InterruptedException e) {
                    interrupted = true;
                    stop();
                } catch (ExecutionException e) {
                    throw new IllegalStateException(e.getCause());
                }
            }
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private static void awaitEnd(ExecutorService workers) {
        workers.shutdown();
        boolean interrupted = false;
        while (!workers.isTerminated()) {
            try {
                workers.awaitTermination(1, TimeUnit.MINUTES);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
