package bootmend.trial.search;

import bootmend.trial.Setting;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The settings that a search may take: clocks by {@value #CLOCK_STEP} MHz from the stock clock on, at each voltage level, as
 * far up as no limit is passed.
 */
final class Ground {

    /** Clocks are tried by this, in MHz. */
    static final long CLOCK_STEP = 25;

    private static final double MOST_OF_STOCK = 0.75;

    private final long stock;
    private final int least;
    private final int[] most;
    private final Making making;
    private final int clocks;

    private Ground(long stock, int least, int[] most, Making making) {
        this.stock = stock;
        this.least = least;
        this.most = most;
        this.making = making;
        this.clocks = Arrays.stream(most).max().orElse(0);
    }

    /** Makes a setting of a clock in MHz and a level. */
    @FunctionalInterface
    interface Making {
        Setting of(long clock, int level);
    }

    /**
     * @param stock lowest clock, in MHz
     * @param free whether a setting passes no limit
     */
    static Ground of(long stock, SearchRange range, Making making, Predicate<Setting> free) {
        int highest = (int) (stock * MOST_OF_STOCK / CLOCK_STEP);
        int[] most = new int[range.levels()];
        for (int level = 0; level < most.length; level++) {
            int count = 0;
            while (count < highest && free.test(making.of(stock + count * CLOCK_STEP, level + range.least()))) {
                count++;
            }
            most[level] = count;
        }
        return new Ground(stock, range.least(), most, making);
    }

    int levels() {
        return most.length;
    }

    /** How many clocks are free at a level, from the lowest on. */
    int free(int level) {
        return most[level];
    }

    /** How many clocks are free at some level. */
    int clocks() {
        return clocks;
    }

    long clock(int index) {
        return stock + index * CLOCK_STEP;
    }

    Setting setting(int clock, int level) {
        return making.of(clock(clock), level + least);
    }

    /** The voltage level in grains of its axis. */
    int grains(int level) {
        return level + least;
    }

    /** Where a setting stands among these; empty where it is none of them. */
    Optional<Target> find(Setting wanted) {
        long above = wanted.clock() - stock;
        double level = wanted.voltage().level() - least;
        boolean on = above >= 0 && above % CLOCK_STEP == 0 && level >= 0 && level < most.length && level % 1 == 0;
        return on ? Optional.of(new Target((int) (above / CLOCK_STEP), (int) level)) : Optional.empty();
    }

    /** How many of the clocks at a level hold on a board, from the lowest on; a hold is nine runs of ten. */
    int capable(Silicon board, int level) {
        double top = board.edge(level + least) - Target.BELOW_EDGE * board.width();
        return Math.max(0, Math.min(most[level], (int) Math.floor((top - stock) / CLOCK_STEP) + 1));
    }
}
