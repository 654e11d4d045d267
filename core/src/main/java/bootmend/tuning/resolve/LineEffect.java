package bootmend.tuning.resolve;

/** What becomes of a tuning line on a board. */
public enum LineEffect {
    /** It gives a key its value. */
    IN_FORCE("set"),
    DEPENDS("depends"),
    /** A later line with the same key, or a more exact key, replaces its value in any case. */
    OVERRIDDEN("shadowed"),
    IGNORED("ignored"),
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
