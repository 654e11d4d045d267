package bootmend.gui.model;

import bootmend.page.CardOutcome;
import bootmend.page.CardState;
import java.nio.file.Path;
import java.util.Optional;

/**
 * One card of a batch.
 *
 * @param now what it was when it was last read; empty where it could not be, or was not yet
 * @param outcome what the last task came to on it; empty where none reached it yet
 * @param sectors sector writes of the change in {@code outcome}, those of a mounted folder not counted
 * @param waiting whether the task in work has not come to it yet
 */
public record BatchRow(
        Path card, Optional<CardOutcome.Was> now, Optional<CardOutcome> outcome, int sectors, boolean waiting) {

    static BatchRow of(Path card) {
        return new BatchRow(card, Optional.empty(), Optional.empty(), 0, true);
    }

    /** The same, with a task before it. */
    BatchRow inTurn() {
        return new BatchRow(card, now, outcome, sectors, true);
    }

    /** The same after a task. */
    BatchRow after(CardOutcome came, int written) {
        return new BatchRow(card, came.was().or(() -> now), Optional.of(came), written, false);
    }

    /** The same after it was read once more. */
    BatchRow as(Optional<CardOutcome.Was> read) {
        return new BatchRow(card, read, outcome, sectors, waiting);
    }

    /** What a user knows it by. */
    public String name() {
        Path name = card.getFileName();
        return name == null ? card.toString() : name.toString();
    }

    /** Whether the last task came to this on it. */
    public boolean is(CardState state) {
        return outcome.filter(came -> came.state() == state).isPresent();
    }

    /** Whether something is left to do on it. */
    public boolean wantsAttention() {
        return outcome.filter(CardOutcome::wantsAttention).isPresent();
    }
}
