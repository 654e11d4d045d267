package bootmend.boot;

/** What a link of the boot chain was found to be. */
public enum LinkState {
    /** There, and nothing wrong with it as far as it was looked at; or not needed. */
    WHOLE("whole"),
    /** Not there. */
    MISSING("missing"),
    /** There, but not as a board can use it. */
    DAMAGED("damaged"),
    /** The card does not tell. */
    UNKNOWN("unknown");

    private final String word;

    LinkState(String word) {
        this.word = word;
    }

    /** How JSON and listings say it. */
    public String word() {
        return word;
    }
}
