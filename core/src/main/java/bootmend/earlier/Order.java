package bootmend.earlier;

/**
 * What puts a version where it stands in the order of time.
 *
 * @param certain whether it is certain rather than likely
 * @param by what tells it
 */
public record Order(boolean certain, By by) {

    /** What tells when a version was there. */
    public enum By {
        /** The undo records of the changes that this computer made to the card. */
        RECORDS,
        /** The times that were written with the files, by the clock of whoever wrote them, and where they lie. */
        TIMES,
        /** Where its clusters lie: most systems take free clusters in turn, and begin again at the end. */
        CLUSTERS,
        /** Nothing: only that it is there. */
        NOTHING
    }
}
