package bootmend.trial;

import java.util.Arrays;
import java.util.Optional;

/** A scale that core voltage is set on, by a key of the config file; numbers on two scales cannot be compared. */
public enum VoltageAxis {
    /** Fixed by steps of 0.025 V; source: S1 of tuning/sources.csv. */
    STEPS("over_voltage", 1, "voltage step"),
    /** Microvolts added to what the board scales to by itself; source: S1 of tuning/sources.csv. */
    SHIFT("over_voltage_delta", 25_000, "voltage shift"),
    /** What a board takes by itself, where that stands on no scale: always 0. */
    OWN("", 1, "voltage left to the board");

    /** Microvolts of one voltage step; source: S1 of tuning/sources.csv. */
    public static final long STEP_MICROVOLTS = 25_000;

    private final String key;
    private final long grain;
    private final String words;

    VoltageAxis(String key, long grain, String words) {
        this.key = key;
        this.grain = grain;
        this.words = words;
    }

    /** The key of the config file. */
    public String key() {
        return key;
    }

    /** How much of it makes 0.025 V, which is what a search goes by. */
    public long grain() {
        return grain;
    }

    /** As a heading says it, such as {@code voltage step (over_voltage)}. */
    public String words() {
        return switch (this) {
            case STEPS -> words + " (" + key + ")";
            case SHIFT -> words + " (" + key + ", microvolts)";
            case OWN -> words;
        };
    }

    static Optional<VoltageAxis> of(String key) {
        return Arrays.stream(values()).filter(axis -> axis.key.equals(key)).findFirst();
    }
}
