package bootmend.tuning.resolve;

/** How sure a key's effective value is. */
public enum EffectiveState {
    /** The board runs this value. */
    SET("set"),
    /** Whether the board runs this value hangs on something that is not known here. */
    DEPENDS("depends"),
    /** The board does nothing with the key. */
    IGNORED("ignored");

    private final String word;

    EffectiveState(String word) {
        this.word = word;
    }

    /** How JSON and listings say it. */
    public String word() {
        return word;
    }
}
