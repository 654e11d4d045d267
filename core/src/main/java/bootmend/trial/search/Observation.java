package bootmend.trial.search;

import bootmend.trial.Placed;
import bootmend.trial.Trial;
import java.util.Optional;

/**
 * What a trial tells of a board's stability.
 *
 * @param clock in MHz
 * @param level voltage, in grains of its axis
 * @param kind how it ended
 * @param minutes how long it ran, or was to run
 * @param doubt how likely its word has nothing to do with the board, 0 to 1
 */
record Observation(double clock, double level, Kind kind, double minutes, double doubt) {

    /** A trial that a log of the board's backs. No source. */
    static final double DOUBT_OF_LOG = 0.01;
    /** A trial that is known by a user's word alone. No source. */
    static final double DOUBT_OF_WORD = 0.12;
    /** Minutes that a failed run was meant to go on where nobody said so. No source. */
    private static final double MEANT = 10;
    /** Less than this is not told from another: minutes are written down by the whole. */
    private static final double LEAST = 0.5;

    /** How a run ended. */
    enum Kind {
        HELD,
        NO_BOOT,
        /** It booted, and failed while it ran. */
        FAILED,
        /** It booted; what came then tells nothing of stability. */
        BOOTED
    }

    static Optional<Observation> of(Placed placed) {
        Trial trial = placed.trial();
        double minutes = trial.run().minutes().orElse(MEANT);
        return switch (trial.standing().kind()) {
            case HELD ->
                Optional.of(seen(placed, Kind.HELD, trial.run().minutes().orElse(LEAST)));
            case FAILED -> Optional.of(seen(placed, failure(trial), minutes));
            case THROTTLED -> Optional.of(seen(placed, Kind.BOOTED, 0));
            case UNDECIDED ->
                trial.grounds().contradictions().isEmpty()
                        ? Optional.of(seen(placed, Kind.BOOTED, 0))
                        : Optional.empty();
        };
    }

    private static Kind failure(Trial trial) {
        return switch (trial.outcome()) {
            case NO_BOOT -> Kind.NO_BOOT;
            default -> Kind.FAILED;
        };
    }

    private static Observation seen(Placed placed, Kind kind, double minutes) {
        return new Observation(
                placed.setting().clock(),
                placed.setting().voltage().level(),
                kind,
                Math.max(LEAST, minutes),
                placed.trial().grounds().isLogged() ? DOUBT_OF_LOG : DOUBT_OF_WORD);
    }

    /** The same, at least so much in doubt. */
    Observation doubted(double atLeast) {
        return new Observation(clock, level, kind, minutes, Math.max(doubt, atLeast));
    }
}
