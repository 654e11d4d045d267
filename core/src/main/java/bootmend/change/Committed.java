package bootmend.change;

/** A change that is written, forced as far as its target allows, and read back; a closed set. */
public sealed interface Committed {

    /** One of a card, of which an undo record is kept. */
    sealed interface Recorded extends Committed {

        /** The change's undo record. */
        UndoRecord record();

        /**
         * Whether the name that the card was opened by still leads to what was changed. Where it does not, another file
         * took the name meanwhile, and what was changed is no longer to be found under it.
         */
        boolean nameKept();
    }

    /**
     * Every sector was forced to the card and read back.
     *
     * @param secondReaderAgrees whether fat32-lib read the files too; false where it cannot read such a card
     */
    record ToSectors(UndoRecord record, boolean nameKept, boolean secondReaderAgrees) implements Recorded {}

    /** Every file was handed to the system and read back from it; the card must be ejected before it is taken out. */
    record ToFolder(UndoRecord record, boolean nameKept) implements Recorded {}

    /**
     * A file that is on no card was replaced in one step and read back; no undo record is kept.
     *
     * @param file its path without links
     */
    record ToFile(String file) implements Committed {}
}
