package bootmend.change;

/**
 * A change that is written, forced and read back.
 *
 * @param record its undo record
 * @param secondReaderAgrees whether fat32-lib read the files too; false where it cannot read such a card
 */
public record Committed(UndoRecord record, boolean secondReaderAgrees) {}
