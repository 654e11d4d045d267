package bootmend.operation;

import bootmend.CardException;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.change.Interruption;
import bootmend.change.OpenChange;
import bootmend.change.Recovery;
import bootmend.view.RecordedChange;
import bootmend.view.RecoveryView;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A card that is held for recovery of a change that was interrupted, if there is one. */
public final class OpenRecovery implements Closeable {

    private final OpenCard card;
    private final Recovery recovery;
    private final Interruption found;
    private final Optional<OpenChange> change;

    OpenRecovery(OpenCard card, Recovery recovery, Interruption found, Optional<OpenChange> change) {
        this.card = card;
        this.recovery = recovery;
        this.found = found;
        this.change = change;
    }

    /** Changes to cards of this make-up that wait, of which nothing shows that one was made to this card; oldest first. */
    public List<RecordedChange> elsewhere() {
        return found instanceof Interruption.Elsewhere other
                ? other.records().stream().map(RecordedChange::of).toList()
                : List.of();
    }

    /** Records of such a card that are not whole, so that nothing can be told or undone with them. */
    public List<Path> incomplete() throws CardException {
        try {
            return recovery.incomplete();
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /** The change that waits, or nothing. */
    public Optional<RecoveryView> view() {
        return change.map(RecoveryView::of);
    }

    /**
     * Writes what is left of the change and reads it back.
     *
     * @throws CardException of kind REFUSED when the card was changed since, of kind INTERRUPTED when it fails again
     */
    public Made finish() throws CardException {
        return Made.of(recovery.finish(change.orElseThrow()));
    }

    /** Writes the old content back and reads that back. */
    public Made undo() throws CardException {
        return Made.of(recovery.undo(change.orElseThrow()));
    }

    @Override
    public void close() throws IOException {
        card.close();
    }
}
