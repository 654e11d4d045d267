package bootmend.page;

/** What became of one card of a batch. */
public enum CardState {
    CHANGED("changed"),
    /** A change was worked out and not made. */
    PLANNED("to change"),
    /** The card was as wanted already. */
    NOTHING("nothing to do"),
    SEEN("read"),
    /** A check found no blocker. */
    READY("ready"),
    NOT_READY("not ready"),
    FAILED("failed"),
    /** The batch was stopped before the card's turn. */
    NOT_STARTED("not started");

    private final String words;

    CardState(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
