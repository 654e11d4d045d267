package bootmend.trial;

/**
 * What a trial counts for.
 *
 * @param kind whether the setting failed, held, or neither was shown
 * @param why in words, for a listing
 */
public record Standing(Kind kind, String why) {

    /** Whether a setting failed, held, or neither was shown. */
    public enum Kind {
        FAILED,
        HELD,
        /** The board lowered its own clock or reported a bit: heat or supply, not voltage. */
        THROTTLED,
        UNDECIDED
    }

    /** Minutes under full load from which on a setting that holds is known-good (common practice, no source). */
    public static final double KNOWN_GOOD_MINUTES = 45;

    static Standing of(Trial trial) {
        Run run = trial.run();
        if (!trial.grounds().contradictions().isEmpty()) {
            return new Standing(
                    Kind.UNDECIDED,
                    "its log contradicts it: "
                            + trial.grounds().contradictions().get(0));
        }
        if (trial.outcome().isFailure()) {
            return new Standing(Kind.FAILED, trial.outcome().word());
        }
        if (run.mask().orElse(0) != 0) {
            return new Standing(Kind.THROTTLED, "the throttle mask has bits set");
        }
        if (trial.outcome() == Outcome.THROTTLES) {
            return new Standing(Kind.THROTTLED, trial.outcome().word());
        }
        if (trial.outcome() == Outcome.BOOTS) {
            return new Standing(Kind.UNDECIDED, "it only booted");
        }
        if (!run.fullLoad()) {
            return new Standing(Kind.UNDECIDED, "it held, but not under full load");
        }
        if (run.mask().isEmpty()) {
            return new Standing(Kind.UNDECIDED, "it held, but the throttle mask was not written down");
        }
        return new Standing(
                Kind.HELD,
                isLong(run)
                        ? "known-good: it held long enough under full load"
                        : "it held, but for less than " + (int) KNOWN_GOOD_MINUTES + " minutes");
    }

    static boolean isLong(Run run) {
        return run.minutes().orElse(0) >= KNOWN_GOOD_MINUTES;
    }

    public boolean is(Kind other) {
        return kind == other;
    }
}
