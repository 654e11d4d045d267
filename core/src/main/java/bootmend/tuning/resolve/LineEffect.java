package bootmend.tuning.resolve;

/** What becomes of a tuning line on a board. */
public enum LineEffect {
    IN_FORCE("in force"),
    DEPENDS("depends"),
    /** A later line with the same key, or a more exact key, replaces its value in any case. */
    OVERRIDDEN("overridden"),
    IGNORED("ignored by this board"),
    OTHER_BOARD("not for this board"),
    NEVER_APPLIES("never applies");

    private final String word;

    LineEffect(String word) {
        this.word = word;
    }

    /** How a listing says it. */
    public String word() {
        return word;
    }
}
