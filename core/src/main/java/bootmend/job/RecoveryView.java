package bootmend.job;

import java.time.Instant;

/**
 * A change that was cut short, as a user is shown it.
 *
 * @param title what it was to do
 * @param began when it was begun
 * @param state how far it came on this card, in words
 * @param fits whether it can be finished or taken back on this card as it is now
 * @param nothingWritten whether nothing of it stands on the card
 * @param finishSuggested whether finishing is the shorter way, because the new content counts already
 * @param undoRecord where its undo record lies
 */
public record RecoveryView(
        String title,
        Instant began,
        String state,
        boolean fits,
        boolean nothingWritten,
        boolean finishSuggested,
        String undoRecord) {}
