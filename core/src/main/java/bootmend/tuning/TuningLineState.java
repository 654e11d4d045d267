package bootmend.tuning;

/** Whether a line with a tuning key counts. */
public enum TuningLineState {
    /** It counts, on every board that reads its section: this is a tuning line. */
    ACTIVE("active"),
    COMMENTED_OUT("commented out"),
    /** It stands in section {@code [none]}. */
    NEVER_APPLIES("never applies"),
    /** The key differs from the vocabulary's in upper and lower case, which the board tells apart. */
    WRONG_CASE("not read: wrong case"),
    /** A blank before {@code =} is part of the key, so the board does not know it. */
    BLANK_IN_KEY("not read: blank before =");

    private final String word;

    TuningLineState(String word) {
        this.word = word;
    }

    /** How a listing says it. */
    public String word() {
        return word;
    }
}
