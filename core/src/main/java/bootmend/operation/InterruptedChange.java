package bootmend.operation;

import bootmend.change.UndoRecord;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * A change to some card that was cut short and waits for it, as a user is shown it.
 *
 * @param id by which it is named, part of its undo record's name
 * @param title what it was to do
 * @param card where the card was when it was begun
 * @param undoRecord where its undo record lies
 */
public record InterruptedChange(String id, String title, Instant began, String card, String undoRecord) {

    static InterruptedChange of(UndoRecord record) {
        return new InterruptedChange(
                record.id(),
                record.plan().title(),
                record.created().truncatedTo(ChronoUnit.SECONDS),
                record.cardPath(),
                record.file().toString());
    }
}
