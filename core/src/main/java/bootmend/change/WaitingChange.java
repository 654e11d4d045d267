package bootmend.change;

import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Chooses among open records the one of the change that waits on a card. */
final class WaitingChange {

    /** Says how far a change came on the card. */
    @FunctionalInterface
    interface Look {
        OpenChange at(UndoRecord record) throws IOException;
    }

    private WaitingChange() {}

    /**
     * One of which a part stands on the card is surely this card's; of the others the path decides. The newest is taken
     * where there are several, one that came partly before any other.
     *
     * @param open oldest first
     */
    static Optional<OpenChange> among(List<UndoRecord> open, String cardPath, Look look) throws IOException {
        Optional<OpenChange> found = Optional.empty();
        for (UndoRecord record : open) {
            OpenChange change = look.at(record);
            boolean surelyThis = change.extent() == OpenChange.Extent.PART
                    || record.cardPath().equals(cardPath);
            if (surelyThis
                    && found.filter(before -> before.extent() == OpenChange.Extent.PART)
                            .isEmpty()) {
                found = Optional.of(change);
            }
        }
        return found;
    }
}
