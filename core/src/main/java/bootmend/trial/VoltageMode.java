package bootmend.trial;

/** Who sets the core voltage. */
public enum VoltageMode {
    /** No key does. */
    LEFT("left to the board"),
    FIXED("fixed by over_voltage"),
    SHIFTED("shifted by over_voltage_delta");

    private final String words;

    VoltageMode(String words) {
        this.words = words;
    }

    /** As sentences say it. */
    public String words() {
        return words;
    }
}
