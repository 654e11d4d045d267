package bootmend.trial;

import bootmend.config.Truth;
import bootmend.tuning.Figure;
import bootmend.tuning.Stock;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Puts trials at their clock and voltage; those that have no place there are set aside with a reason.
 *
 * @param placed in the order of the trials
 * @param aside one sentence each
 */
public record Placement(List<Placed> placed, List<String> aside) {

    static final String CLOCK = "arm_freq";
    private static final String SCALING = "dvfs";
    private static final long FIXED_FOR_DEFAULTS = 2;
    private static final long SCALES_UP = 3;

    public Placement {
        placed = List.copyOf(placed);
        aside = List.copyOf(aside);
    }

    public static Placement of(List<Trial> trials, TuningTables tables) {
        List<Placed> placed = new ArrayList<>();
        List<String> aside = new ArrayList<>();
        for (Trial trial : trials) {
            try {
                placed.add(new Placed(trial, new Setting(clock(trial, tables), voltage(trial, tables))));
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

    private static Voltage voltage(Trial trial, TuningTables tables) {
        Map<String, Long> settings = trial.settings();
        Long step = settings.get(VoltageAxis.STEPS.key());
        Long shift = settings.get(VoltageAxis.SHIFT.key());
        if (step != null) {
            if (shift != null && shift != 0) {
                throw new IllegalArgumentException("it sets both " + VoltageAxis.STEPS.key() + " and "
                        + VoltageAxis.SHIFT.key() + ", and what comes of both together is not published");
            }
            TuningKey key = tables.vocabulary().find(VoltageAxis.STEPS.key()).orElseThrow();
            if (step < key.min().orElse(step) || step > key.max().orElse(step)) {
                throw new IllegalArgumentException(VoltageAxis.STEPS.key() + "=" + step
                        + " is outside the published range, so that what the board made of it is not known");
            }
            return Voltage.of(VoltageAxis.STEPS, step);
        }
        if (shift != null) {
            return Voltage.of(VoltageAxis.SHIFT, shift);
        }
        return left(settings.get(SCALING), trial.unit().board(), tables);
    }

    /** What a board does by itself; source: S30 of tuning/sources.csv. */
    private static Voltage left(Long scaling, String board, TuningTables tables) {
        VoltageAxis axis = leftAxis(board, tables);
        if (axis != VoltageAxis.SHIFT || scaling == null || scaling == SCALES_UP) {
            return Voltage.leftOn(axis);
        }
        if (scaling == FIXED_FOR_DEFAULTS) {
            return Voltage.of(VoltageAxis.STEPS, 0);
        }
        throw new IllegalArgumentException("it sets " + SCALING + "=" + scaling
                + ", under which the voltage may fall below what other trials had");
    }

    /** The voltage of a board with no voltage key. */
    public static Voltage left(String board, TuningTables tables) {
        return Voltage.leftOn(leftAxis(board, tables));
    }

    static VoltageAxis leftAxis(String board, TuningTables tables) {
        return tables.voltageControls()
                .of(board)
                .flatMap(control -> control.left())
                .flatMap(VoltageAxis::of)
                .orElse(VoltageAxis.OWN);
    }

    /** Those on one axis, in their order. */
    public List<Placed> on(VoltageAxis axis) {
        return placed.stream().filter(each -> each.setting().axis() == axis).toList();
    }
}
