package bootmend.operation;

import bootmend.change.Committed;
import bootmend.change.UndoRecord;

/** How bytes reached a card, which is what can be promised of it; a closed set. */
public sealed interface Made {

    /** One answer for each way. */
    interface Cases<R> {

        R onCard(OnCard made);

        R inFolder(InFolder made);
    }

    /** The answer for this way. */
    <R> R match(Cases<R> cases);

    /** Where the undo record lies. */
    String record();

    /**
     * Every sector was written, synced to the card and read back; the card can be taken out.
     *
     * @param secondReader whether the second reader, too, found the files as planned; false where it cannot read such a
     *     card
     */
    record OnCard(String record, boolean secondReader) implements Made {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.onCard(this);
        }
    }

    /** Every file was written through the system and read back from it; the card is mounted and must be ejected first. */
    record InFolder(String record) implements Made {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.inFolder(this);
        }
    }

    static Made of(Committed committed, boolean folder) {
        UndoRecord record = committed.record();
        return folder
                ? new InFolder(record.file().toString())
                : new OnCard(record.file().toString(), committed.secondReaderAgrees());
    }
}
