package bootmend.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class CardBatchTest {

    private final List<CardResult<String>> results = new ArrayList<>();

    @Test
    void resultsComeInTheCardsOrderWhicheverEndsFirst() {
        CountDownLatch second = new CountDownLatch(1);

        new CardBatch(2)
                .run(
                        cards(2),
                        card -> {
                            if (card.equals(cards(2).get(0))) {
                                await(second);
                            } else {
                                second.countDown();
                            }
                            return card.toString();
                        },
                        results::add);

        assertThat(results).extracting(result -> result.view().orElseThrow()).containsExactly("0.img", "1.img");
    }

    @Test
    void asManyCardsAreInWorkAsWereAskedFor() {
        CyclicBarrier all = new CyclicBarrier(4);

        new CardBatch(4)
                .run(
                        cards(8),
                        card -> {
                            try {
                                return "" + all.await(30, TimeUnit.SECONDS);
                            } catch (Exception e) {
                                throw new IllegalStateException(e);
                            }
                        },
                        results::add);

        assertThat(results).hasSize(8).allMatch(result -> result.view().isPresent());
    }

    @Test
    void whateverFailsStaysWithItsCard() {
        new CardBatch(3)
                .run(
                        cards(5),
                        card -> switch (card.toString()) {
                            case "1.img" -> throw CardException.unreadable("it is empty", "Read it again.");
                            case "2.img" -> throw new IllegalStateException("nobody foresaw this");
                            case "3.img" -> throw new StackOverflowError();
                            default -> "fine";
                        },
                        results::add);

        assertThat(results)
                .extracting(result -> result.view().isPresent())
                .containsExactly(true, false, false, false, true);
        assertThat(results.get(1).error().orElseThrow()).hasMessage("it is empty");
        assertThat(results.get(2).error().orElseThrow()).hasMessageContaining("nobody foresaw this");
        assertThat(results).allMatch(CardResult::started);
    }

    @Test
    void stoppingEndsTheCardsInWorkAndLeavesTheRestUnstarted() {
        CardBatch batch = new CardBatch(1);
        AtomicInteger begun = new AtomicInteger();

        batch.run(
                cards(500),
                card -> {
                    if (begun.incrementAndGet() == 3) {
                        batch.stop();
                    }
                    return "done";
                },
                results::add);

        assertThat(begun).hasValue(3);
        assertThat(results).hasSize(500);
        assertThat(results.subList(0, 3))
                .allMatch(result -> result.started() && result.view().isPresent());
        assertThat(results.subList(3, 500))
                .noneMatch(CardResult::started)
                .allSatisfy(result ->
                        assertThat(result.error().orElseThrow().kind()).isEqualTo(CardException.Kind.REFUSED));
    }

    @Test
    void aWorkerIsNeverInterruptedAndTheCardInWorkEnds() throws InterruptedException {
        CountDownLatch inWork = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        Thread caller = new Thread(() -> new CardBatch(1)
                .run(
                        cards(2),
                        card -> {
                            inWork.countDown();
                            await(goOn);
                            return Thread.currentThread().isInterrupted() ? "interrupted" : "whole";
                        },
                        results::add));
        caller.start();
        inWork.await();
        caller.interrupt();
        goOn.countDown();
        caller.join();

        assertThat(results.get(0).view()).contains("whole");
        assertThat(results).hasSize(2);
    }

    @Test
    void resultsThatWaitForASlowCardAreBounded() {
        int jobs = 2;
        int mayWait = jobs * 8;
        CountDownLatch full = new CountDownLatch(mayWait - 1);
        AtomicInteger begun = new AtomicInteger();
        AtomicInteger whileFirstWasInWork = new AtomicInteger();

        new CardBatch(jobs)
                .run(
                        cards(1000),
                        card -> {
                            if (card.toString().equals("0.img")) {
                                await(full);
                                // Time in which a batch without a bound would go on with the rest.
                                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
                                whileFirstWasInWork.set(begun.get());
                            } else {
                                begun.incrementAndGet();
                                full.countDown();
                            }
                            return "";
                        },
                        results::add);

        assertThat(whileFirstWasInWork).hasValue(mayWait - 1);
        assertThat(results).hasSize(1000);
    }

    @Test
    void whereResultsCannotBeTakenNoOtherCardIsStarted() {
        AtomicInteger begun = new AtomicInteger();

        assertThatThrownBy(() -> new CardBatch(1).run(cards(1000), card -> "" + begun.incrementAndGet(), result -> {
                    throw new IllegalStateException("no room");
                }))
                .hasMessage("no room");

        assertThat(begun.get()).isLessThan(1000);
    }

    private static List<Path> cards(int count) {
        return IntStream.range(0, count).mapToObj(i -> Path.of(i + ".img")).toList();
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
