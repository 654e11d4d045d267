package bootmend.view;

import bootmend.change.UndoRecord;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * A change to some card, as its undo record names it; whether that card is the one in hand is another question.
 *
 * @param id by which it is named, part of its undo record's name
 * @param title what it did or was to do
 * @param began when it was begun, to the second
 * @param card where the card was then; not yet safe to show
 * @param undoRecord where its undo record lies
 */
public record RecordedChange(String id, String title, Instant began, String card, String undoRecord) {

    public static RecordedChange of(UndoRecord record) {
        return new RecordedChange(
                record.id(),
                record.plan().title(),
                record.created().truncatedTo(ChronoUnit.SECONDS),
                record.cardPath(),
                record.file().toString());
    }

    /** What it is and where it came from, as a part of a sentence. */
    public String words() {
        return "\"" + title + "\", begun " + began + " at " + card + " (id " + id + ")";
    }
}
