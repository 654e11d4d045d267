package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Work one piece after the other, off the screen's thread. */
class WorkQueueTest {

    private final Deque<Runnable> worker = new ArrayDeque<>();
    private final Deque<Runnable> screen = new ArrayDeque<>();
    private final WorkQueue queue = new WorkQueue(worker::add, screen::add);
    private final List<String> log = new ArrayList<>();

    @Test
    void piecesAreDoneOneAtATimeInTheirOrder() {
        submit("first");
        submit("second");

        assertThat(worker).hasSize(1);
        assertThat(queue.busy().get()).contains("first");
        turn();
        assertThat(log).containsExactly("first");
        assertThat(worker).hasSize(1);
        turn();
        assertThat(log).containsExactly("first", "second");
        assertThat(queue.isIdle()).isTrue();
        assertThat(queue.busy().get()).isEmpty();
    }

    @Test
    void whatSomeoneWaitsForGoesBeforeWhatWaits() {
        submit("reading");
        submit("check");
        queue.submitFirst("change", () -> "change", log::add, error -> log.add(error.getMessage()));

        turn();
        turn();
        turn();

        assertThat(log).containsExactly("reading", "change", "check");
    }

    @Test
    void aDroppedPieceThatWaitsIsNeverBegun() {
        submit("first");
        WorkQueue.Ticket second = submit("second");

        second.drop();
        turn();

        assertThat(log).containsExactly("first");
        assertThat(worker).isEmpty();
        assertThat(queue.isIdle()).isTrue();
    }

    @Test
    void theResultOfADroppedPieceInWorkIsNotSeen() {
        WorkQueue.Ticket ticket = submit("first");

        worker.remove().run();
        ticket.drop();
        screen.remove().run();

        assertThat(log).isEmpty();
        assertThat(queue.isIdle()).isTrue();
    }

    @Test
    void whatFailsIsToldAndTheNextPieceGoesOn() {
        queue.<String>submit(
                "bad",
                () -> {
                    throw CardException.refused("no", "Do something else.");
                },
                log::add,
                error -> log.add(error.remedy()));
        queue.<String>submit(
                "worse",
                () -> {
                    throw new IllegalStateException("broken");
                },
                log::add,
                error -> log.add(error.getMessage()));
        submit("last");

        turn();
        turn();
        turn();

        assertThat(log)
                .containsExactly(
                        "Do something else.",
                        "something unforeseen happened (java.lang.IllegalStateException: broken)",
                        "last");
    }

    @Test
    void aWatcherThatThrowsDoesNotStopTheBench() {
        queue.submit(
                "first",
                () -> "first",
                value -> {
                    throw new IllegalStateException("a view is broken");
                },
                error -> {});
        submit("second");

        worker.remove().run();
        Optional<RuntimeException> thrown = Optional.empty();
        try {
            screen.remove().run();
        } catch (IllegalStateException e) {
            thrown = Optional.of(e);
        }
        turn();

        assertThat(thrown).isPresent();
        assertThat(log).containsExactly("second");
    }

    @Test
    void whatIsReadIsStoppedWithAllThatWaits() {
        submit("reading");
        submit("check");
        worker.remove().run();

        queue.stop(CardException.refused("stopped", "Read it again."));

        assertThat(queue.isStopping()).isTrue();
        assertThat(log).containsExactly("stopped");
        screen.remove().run();
        assertThat(log).containsExactly("stopped", "stopped");
        submit("next");
        assertThat(queue.isStopping()).isFalse();
    }

    @Test
    void aChangeIsNeverStopped() {
        queue.submitChange("change", () -> "changed", log::add, error -> log.add(error.getMessage()));

        assertThat(queue.canStop().get()).isFalse();
        queue.stop(CardException.refused("stopped", "Read it again."));

        assertThat(queue.isStopping()).isFalse();
        turn();
        assertThat(log).containsExactly("changed");
    }

    private WorkQueue.Ticket submit(String name) {
        return queue.submit(name, () -> name, log::add, error -> log.add(error.getMessage()));
    }

    /** One piece off the screen's thread, then what it leads to on it. */
    private void turn() {
        worker.remove().run();
        screen.remove().run();
    }
}
