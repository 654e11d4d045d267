package bootmend.change;

/** What became of an interrupted change; a closed set. */
public sealed interface Recovered {

    /** The change's undo record, which is no longer open. */
    UndoRecord record();

    /** What was left of it was written and read back. */
    record Finished(Committed.Recorded committed) implements Recovered {
        @Override
        public UndoRecord record() {
            return committed.record();
        }
    }

    /** The old content was written back and read back. */
    record Undone(Committed.Recorded committed) implements Recovered {
        @Override
        public UndoRecord record() {
            return committed.record();
        }
    }

    /** Nothing of it stood on the card and nothing was written; its record was put away. */
    record Closed(UndoRecord record) implements Recovered {}
}
