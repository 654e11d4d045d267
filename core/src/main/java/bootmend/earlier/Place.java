package bootmend.earlier;

import java.time.Instant;

/** Where a text was found; a closed set. */
public sealed interface Place {

    /** One answer for each kind of place. */
    interface Cases<R> {

        R copy(Copy place);

        R swap(Swap place);

        R deleted(Deleted place);

        R free(Free place);

        R record(Recorded place);
    }

    /** The answer for this kind. */
    <R> R match(Cases<R> cases);

    /** A file that is a copy of the config file. */
    record Copy(String path) implements Place {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.copy(this);
        }
    }

    /** The swap file of an editor that was stopped. */
    record Swap(String path) implements Place {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.swap(this);
        }
    }

    /**
     * The clusters of a file that was deleted.
     *
     * @param name as far as it is left; not yet safe to show
     * @param cluster the first
     */
    record Deleted(String name, long cluster) implements Place {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.deleted(this);
        }
    }

    /**
     * Free clusters to which no entry leads.
     *
     * @param cluster the first
     */
    record Free(long cluster) implements Place {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.free(this);
        }
    }

    /**
     * An undo record on this computer.
     *
     * @param id the record's
     * @param when the change was made
     * @param title what it did
     */
    record Recorded(String id, Instant when, String title) implements Place {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.record(this);
        }
    }
}
