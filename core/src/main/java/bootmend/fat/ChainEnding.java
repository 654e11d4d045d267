package bootmend.fat;

/** How following a chain came to its end. */
public enum ChainEnding {
    /** An end mark, or no cluster at all for an empty file. */
    COMPLETE("ends as it should"),
    LOOPS("loops back into itself"),
    FREE("runs into a cluster that is marked free"),
    BAD("runs into a cluster that is marked bad"),
    OUTSIDE("points outside the volume"),
    /** Only a full look tells; whoever follows a single chain does not notice. */
    CROSSES("runs into the clusters of another file"),
    /** More clusters than were asked for; the rest was not followed. */
    LONGER("is longer than the file's size");

    private final String words;

    ChainEnding(String words) {
        this.words = words;
    }

    /** A clause on it, without a subject. */
    public String words() {
        return words;
    }
}
