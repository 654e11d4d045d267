package bootmend.trial;

import bootmend.config.Truth;
import bootmend.tuning.Figure;
import bootmend.tuning.Stock;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Puts trials at their clock and voltage step; those that have no place there are set aside with a reason.
 *
 * @param placed in the order of the trials
 * @param aside one sentence each
 */
public record Placement(List<Placed> placed, List<String> aside) {

    static final String CLOCK = "arm_freq";
    static final String VOLTAGE = "over_voltage";
    static final String DELTA = "over_voltage_delta";

    public Placement {
        placed = List.copyOf(placed);
        aside = List.copyOf(aside);
    }

    public static Placement of(List<Trial> trials, TuningTables tables) {
        List<Placed> placed = new ArrayList<>();
        List<String> aside = new ArrayList<>();
        for (Trial trial : trials) {
            try {
                placed.add(new Placed(trial, new Setting(clock(trial, tables), step(trial, tables))));
            } catch (IllegalArgumentException e) {
                aside.add("Trial " + trial.id() + " is left out: " + e.getMessage() + ".");
            }
        }
        return new Placement(placed, aside);
    }

    private static long clock(Trial trial, TuningTables tables) {
        Long set = trial.settings().get(CLOCK);
        if (set != null) {
            return (long) Quantity.CLOCK.check(set);
        }
        Figure stock = stockClock(trial, tables);
        if (stock instanceof Figure.Value value) {
            return Math.round(value.value());
        }
        throw new IllegalArgumentException("it sets no " + CLOCK + ", and the stock clock is not known ("
                + (stock instanceof Figure.DependsOn depends ? "depends on " + depends.what() : "not published") + ")");
    }

    private static Figure stockClock(Trial trial, TuningTables tables) {
        TuningKey key = tables.vocabulary().find(CLOCK).orElseThrow();
        String board = trial.unit().board();
        boolean boosted = tables.stock().of(CLOCK, board, OptionalInt.empty()).stream()
                .anyMatch(stock -> stock instanceof Stock.WithBoost boost
                        && Long.valueOf(boost.boostValue())
                                .equals(trial.settings().get(boost.boostKey())));
        return tables.stock().figure(key, board, OptionalInt.empty(), Truth.of(boosted));
    }

    /** The stock clock of a board with nothing set, in MHz; empty where it is not published or hangs on more. */
    public static OptionalLong stockClock(String board, TuningTables tables) {
        Figure stock = tables.stock()
                .figure(tables.vocabulary().find(CLOCK).orElseThrow(), board, OptionalInt.empty(), Truth.FALSE);
        return stock instanceof Figure.Value value ? OptionalLong.of(Math.round(value.value())) : OptionalLong.empty();
    }

    private static long step(Trial trial, TuningTables tables) {
        if (trial.settings().getOrDefault(DELTA, 0L) != 0) {
            throw new IllegalArgumentException("it sets " + DELTA + ", which is added to whatever automatic scaling "
                    + "computes, so that its voltage step is not known");
        }
        long step = trial.settings().getOrDefault(VOLTAGE, 0L);
        TuningKey key = tables.vocabulary().find(VOLTAGE).orElseThrow();
        if (step < key.min().orElse(step) || step > key.max().orElse(step)) {
            throw new IllegalArgumentException(VOLTAGE + "=" + step
                    + " is outside the published range, so that what the " + "board made of it is not known");
        }
        return step;
    }
}
