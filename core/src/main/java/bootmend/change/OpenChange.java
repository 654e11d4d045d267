package bootmend.change;

import java.util.List;

/**
 * A change that was begun and is not known to be finished, as it stands on a card.
 *
 * @param record its undo record
 * @param extent how far it came on this card
 * @param committed whether the new content counts already
 * @param foreignSectors places of sectors that hold what the change never wrote
 */
public record OpenChange(UndoRecord record, Extent extent, boolean committed, List<Long> foreignSectors) {

    /** How far a change came on a card. */
    public enum Extent {
        /** Nothing of it stands on the card. */
        NOTHING,
        /** A part of it stands on the card. */
        PART,
        /** All of it stands on the card, but that was never checked. */
        ALL,
        /** The card was changed since in a sector that the record names, or it is another card. */
        FOREIGN
    }

    public OpenChange {
        foreignSectors = List.copyOf(foreignSectors);
    }

    /** Whether some of it stands on the card, so that it can be finished as well as undone. */
    public boolean isBegun() {
        return extent == Extent.PART || extent == Extent.ALL;
    }
}
