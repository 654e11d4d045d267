package bootmend.trial.search;

/**
 * What a search is after: the highest clock at which nine of ten runs of 45 minutes hold, and there the lowest voltage.
 *
 * @param clock index of the clock; -1 where nothing holds
 * @param level index of the level
 */
record Target(int clock, int level) {

    /** Share of runs of 45 minutes that a setting to be kept should hold. No source. */
    static final double SHARE = 0.9;
    /** How far below the edge that is, in widths: ln(ln 2 / -ln 0.9). */
    static final double BELOW_EDGE = Math.log(Math.log(2) / -Math.log(SHARE));

    static Target of(Silicon board, Ground ground) {
        int best = 0;
        int level = 0;
        for (int i = 0; i < ground.levels(); i++) {
            int capable = ground.capable(board, i);
            if (capable > best) {
                best = capable;
                level = i;
            }
        }
        return new Target(best - 1, level);
    }

    /** Whether another one is within a step of clock and a step of voltage. */
    boolean isNear(Target other) {
        return Math.abs(clock - other.clock) <= 1 && Math.abs(level - other.level) <= 1;
    }
}
