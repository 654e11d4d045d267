package bootmend.operation;

import bootmend.change.Committed;
import bootmend.change.Recovered;

/** How bytes reached a card, which is what can be promised of it; a closed set. */
public sealed interface Made {

    /** One answer for each way. */
    interface Cases<R> {

        R onCard(OnCard made);

        R inFolder(InFolder made);

        R inFile(InFile made);

        R closed(Closed made);
    }

    /** The answer for this way. */
    <R> R match(Cases<R> cases);

    /** Where the undo record lies; empty where none is kept. */
    String record();

    /**
     * Every sector was written, synced to the card and read back; the card can be taken out.
     *
     * @param secondReader whether the second reader, too, found the files as planned; false where it cannot read such a
     *     card
     * @param nameKept whether the card's name still leads to what was changed; false where another file took it meanwhile
     */
    record OnCard(String record, boolean secondReader, boolean nameKept) implements Made {

        public OnCard(String record, boolean secondReader) {
            this(record, secondReader, true);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.onCard(this);
        }
    }

    /**
     * Every file was written through the system and read back from it; the card is mounted and must be ejected first.
     *
     * @param nameKept whether the folder's name still leads to what was changed
     */
    record InFolder(String record, boolean nameKept) implements Made {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.inFolder(this);
        }
    }

    /**
     * A config file that is on no card was replaced in one step, synced and read back; no undo record is kept.
     *
     * @param file its path
     */
    record InFile(String file) implements Made {

        @Override
        public String record() {
            return "";
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.inFile(this);
        }
    }

    /** Nothing of an interrupted change stood on the card, so nothing was written; its record was put away. */
    record Closed(String record) implements Made {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.closed(this);
        }
    }

    static Made of(Committed committed) {
        return committed instanceof Committed.ToFile file
                ? new InFile(file.file())
                : of((Committed.Recorded) committed);
    }

    private static Made of(Committed.Recorded committed) {
        String record = committed.record().file().toString();
        return committed instanceof Committed.ToSectors sectors
                ? new OnCard(record, sectors.secondReaderAgrees(), sectors.nameKept())
                : new InFolder(record, committed.nameKept());
    }

    static Made of(Recovered recovered) {
        if (recovered instanceof Recovered.Finished finished) {
            return of(finished.committed());
        }
        return recovered instanceof Recovered.Undone undone
                ? of(undone.committed())
                : new Closed(recovered.record().file().toString());
    }
}
