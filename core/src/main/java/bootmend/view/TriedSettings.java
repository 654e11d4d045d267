package bootmend.view;

/**
 * What a trial or a profile on this computer says of the settings of a config file.
 *
 * @param source which of the two
 * @param name the trial's id or the profile's name
 * @param board the board's id
 * @param label the user's own name for that board; empty for a profile
 * @param outcome what it says
 */
public record TriedSettings(Source source, String name, String board, String label, Outcome outcome) {

    /** What says it. */
    public enum Source {
        TRIAL,
        PROFILE
    }

    /** What is said of settings. */
    public enum Outcome {
        /** They held long enough under full load. */
        KNOWN_GOOD,
        /** They held, for less than that. */
        HELD,
        FAILED,
        THROTTLED,
        /** They are kept, and no trial shows that they hold. */
        UNPROVEN
    }

    /** Whether it says that they held. */
    public boolean isGood() {
        return outcome == Outcome.KNOWN_GOOD || outcome == Outcome.HELD;
    }
}
