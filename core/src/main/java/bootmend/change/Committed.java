package bootmend.change;

/** A change that is written, forced as far as its target allows, and read back; a closed set. */
public sealed interface Committed {

    /** The change's undo record. */
    UndoRecord record();

    /**
     * Whether the name that the card was opened by still leads to what was changed. Where it does not, another file took
     * the name meanwhile, and what was changed is no longer to be found under it.
     */
    boolean nameKept();

    /**
     * Every sector was forced to the card and read back.
     *
     * @param secondReaderAgrees whether fat32-lib read the files too; false where it cannot read such a card
     */
    record ToSectors(UndoRecord record, boolean nameKept, boolean secondReaderAgrees) implements Committed {}

    /** Every file was handed to the system and read back from it; the card must be ejected before it is taken out. */
    record ToFolder(UndoRecord record, boolean nameKept) implements Committed {}
}
