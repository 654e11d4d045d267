package bootmend.gui.model;

import java.time.Duration;

/** How far a batch has come. */
public sealed interface BatchState {

    /** The task that is in work, or that ended last. */
    BatchTask task();

    /**
     * Cards are in work.
     *
     * @param done cards that ended
     * @param all cards that the task is for
     * @param stopping whether no other card is begun
     * @param since when it began, of {@link System#nanoTime()}
     */
    record Working(BatchTask task, int done, int all, boolean stopping, long since) implements BatchState {}

    /**
     * No card is in work.
     *
     * @param tally of every card of the batch
     * @param took from the task's beginning to its end
     */
    record Rest(BatchTask task, BatchTally tally, Duration took) implements BatchState {}
}
