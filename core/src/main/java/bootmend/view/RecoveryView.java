package bootmend.view;

import bootmend.change.OpenChange;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * A change that was interrupted, as a user is shown it.
 *
 * @param title what it was to do
 * @param began when it was begun
 * @param state how far it came on this card, in words
 * @param fits whether it can be finished or undone on this card as it is now
 * @param nothingWritten whether nothing of it stands on the card
 * @param finishSuggested whether finishing is the shorter way, because the new content counts already; never where nothing
 *     of it stands on the card
 * @param undoRecord where its undo record lies
 */
public record RecoveryView(
        String title,
        Instant began,
        String state,
        boolean fits,
        boolean nothingWritten,
        boolean finishSuggested,
        String undoRecord) {
    /** The change as it stands on the card it was looked for on. */
    public static RecoveryView of(OpenChange change) {
        OpenChange.Extent extent = change.extent();
        return new RecoveryView(
                change.record().plan().title(),
                change.record().created().truncatedTo(ChronoUnit.SECONDS),
                words(change),
                extent != OpenChange.Extent.FOREIGN,
                extent == OpenChange.Extent.NOTHING,
                change.committed() && extent != OpenChange.Extent.NOTHING,
                change.record().file().toString());
    }

    /** How far it came, as a clause. */
    public static String words(OpenChange change) {
        return switch (change.extent()) {
            case NOTHING -> "nothing of it stands on this card";
            case PART ->
                change.committed()
                        ? "the new content counts already, and cleaning up is left"
                        : "a part of it stands on this card, and the old content still counts";
            case ALL -> "all of it stands on this card, but it was not checked";
            case FOREIGN -> "this card was changed since, or it is another card of the same make-up";
        };
    }
}
