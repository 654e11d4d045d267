package bootmend.trial.search;

/**
 * The chances of runs on a board that is known.
 *
 * <p>Model: failures come at a rate that stays over a run (a constant hazard), ln 2 / 45 a minute at the edge clock, and e-fold
 * more for each width above it; far above the edge the board does not boot. No source for the shape of either.
 */
final class Stability {

    /** Minutes of a run that shows a setting to be known-good (common practice, no source). */
    static final double MINUTES = 45;

    /** How far above the edge half of all starts fail, in MHz. No source. */
    private static final double BOOTS_UNTIL = 70;
    /** How much clock lies between few failing starts and many, in MHz. No source. */
    private static final double BOOTS_WIDTH = 20;
    /** Starting up loads a board as some minutes of a run do. No source. */
    private static final double START_MINUTES = 0.5;

    /** Less is not told from a failure at once. No source. */
    private static final double WHOLE = 2;

    private static final double MOST_EXPONENT = 40;

    private Stability() {}

    /** The chance that a start fails. */
    static double noBoot(Silicon board, double clock, double level) {
        return 1 / (1 + Math.exp((BOOTS_UNTIL - (clock - board.edge(level))) / BOOTS_WIDTH));
    }

    /** Failures a minute, as the rate of a constant hazard. */
    static double rate(Silicon board, double clock, double level) {
        double above = Math.min(MOST_EXPONENT, (clock - board.edge(level)) / board.width());
        return Math.log(2) / MINUTES * Math.exp(above);
    }

    /** The chance that a run of so many minutes survives such a rate. */
    static double survives(double rate, double minutes) {
        return Math.exp(-rate * (minutes + START_MINUTES));
    }

    /** The chance that a start and then a run of so many minutes holds. */
    static double holds(Silicon board, double clock, double level, double minutes) {
        return (1 - noBoot(board, clock, level)) * survives(board, clock, level, minutes);
    }

    private static double survives(Silicon board, double clock, double level, double minutes) {
        return survives(rate(board, clock, level), minutes);
    }

    /** How likely what was seen is, with what may be wrong about its word. */
    static double chance(Silicon board, Observation seen) {
        double boots = 1 - noBoot(board, seen.clock(), seen.level());
        double chance =
                switch (seen.kind()) {
                    case HELD -> boots * survives(board, seen.clock(), seen.level(), seen.minutes());
                    case NO_BOOT -> 1 - boots;
                    case FAILED -> boots * fails(board, seen);
                    case BOOTED -> boots;
                };
        return (1 - seen.doubt()) * chance + seen.doubt() / 3;
    }

    /**
     * About the minute that was told, or, as likely, before it: minutes are counted from the start or from the load on, and
     * written down by the whole.
     */
    private static double fails(Silicon board, Observation seen) {
        double later = survives(board, seen.clock(), seen.level(), seen.minutes() * 2 + 1);
        double sooner = seen.minutes() < WHOLE
                ? 1
                : survives(board, seen.clock(), seen.level(), seen.minutes() / 2 - START_MINUTES);
        return ((sooner - later) + (1 - later)) / 2;
    }
}
