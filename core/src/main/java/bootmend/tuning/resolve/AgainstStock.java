package bootmend.tuning.resolve;

import bootmend.config.Truth;
import bootmend.tuning.Board;
import bootmend.tuning.ClockChange;
import bootmend.tuning.Figure;
import bootmend.tuning.Stock;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import bootmend.tuning.VoltageSteps;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.function.LongFunction;

/**
 * What the effective values of one board mean in numbers, against its stock values.
 *
 * <p>Where the published value hangs on something that is not known, such as the revision, every value it may have is
 * given. What no source publishes stays {@link Figure.NotPublished}.
 */
public final class AgainstStock {

    private static final String CPU_CLOCK = "arm_freq";
    private static final String CPU_VOLTAGE = "over_voltage";
    private static final String CPU_VOLTAGE_DELTA = "over_voltage_delta";
    private static final String CLOCK_UNIT = "MHz";
    private static final Figure ONE = new Figure.Value(1);

    private final TuningTables tables;
    private final Resolution resolution;
    private final Board board;

    /** @param resolution of a board that is known */
    public AgainstStock(TuningTables tables, Resolution resolution) {
        this.tables = tables;
        this.resolution = resolution;
        this.board = resolution.facts().board().orElseThrow();
    }

    /** Every value that a key's stock may have, in the key's unit; never empty. */
    public List<Figure> stock(TuningKey key) {
        return tables.stock().figures(key, board.id(), resolution.facts().revisionNumber(), boosted(key));
    }

    /** Whether a number is stock with some boot firmware, on a board whose stock a later one changed. */
    boolean isStockOfSomeFirmware(TuningKey key, long number) {
        return !tables.stock().changes(key.key(), board.id()).isEmpty()
                && stock(key).stream()
                        .anyMatch(stock -> stock instanceof Figure.Value known && known.value() == number);
    }

    /** Whether the board does anything with a key. */
    Truth reads(TuningKey key) {
        return KeyUse.of(key, resolution.facts(), tables.stock()).condition().truth();
    }

    /** Whether the board does something with a key for sure, or may. */
    public boolean does(TuningKey key) {
        return reads(key) != Truth.FALSE;
    }

    /** How far a clock is above stock, in percent, once for each value that stock may have; empty for other keys. */
    public List<Figure> percent(Effective effective) {
        TuningKey key = key(effective);
        return isIgnored(effective) || !key.unit().equals(CLOCK_UNIT)
                ? List.of()
                : stock(key).stream()
                        .map(stock -> ClockChange.percent(number(effective), stock))
                        .distinct()
                        .toList();
    }

    /** The voltage, in volts, of a key that takes steps; the change, in volts, of one that takes microvolts. */
    public Optional<Figure> volts(Effective effective) {
        if (isIgnored(effective)) {
            return Optional.empty();
        }
        return switch (key(effective).unit()) {
            case "step" -> Optional.of(steps(effective));
            case "microvolt" -> Optional.of(read(effective, VoltageSteps::volts));
            default -> Optional.empty();
        };
    }

    /**
     * Dynamic power of the CPU against stock, once for each value that stock may have: 1 is as stock; empty where
     * both are at stock. See {@link ClockChange#powerRatio}.
     */
    public List<Figure> cpuPower() {
        Optional<Effective> clock = tuned(CPU_CLOCK);
        Optional<Effective> voltage = tuned(CPU_VOLTAGE).filter(each -> !isStock(each));
        Optional<Effective> delta = tuned(CPU_VOLTAGE_DELTA).filter(each -> !isStock(each));
        if (voltage.isEmpty() && delta.isEmpty() && clock.map(this::isAtStock).orElse(true)) {
            return List.of();
        }
        if (delta.isPresent() || voltage.isEmpty()) {
            return List.of(new Figure.NotPublished("the voltage that automatic scaling comes to"));
        }
        Figure volts = sure(voltage.get(), this::steps);
        Figure stockVolts = tables.voltageSteps().volts(CPU_VOLTAGE, board.id(), 0);
        if (clock.isEmpty()) {
            return List.of(ClockChange.powerRatio(ONE, ONE, volts, stockVolts));
        }
        return stock(key(clock.get())).stream()
                .map(stock -> ClockChange.powerRatio(sure(clock.get(), AgainstStock::number), stock, volts, stockVolts))
                .distinct()
                .toList();
    }

    private Optional<Effective> tuned(String key) {
        return resolution.tuning(key).filter(effective -> !isIgnored(effective));
    }

    private boolean isAtStock(Effective clock) {
        return clock.state() == EffectiveState.SET && percent(clock).equals(List.of(new Figure.Value(0)));
    }

    private static Figure sure(Effective effective, Function<Effective, Figure> reader) {
        return effective.state() == EffectiveState.SET
                ? reader.apply(effective)
                : new Figure.DependsOn(String.join(" and ", effective.dependsOn()));
    }

    private Figure steps(Effective effective) {
        return read(effective, step -> tables.voltageSteps().volts(effective.key(), board.id(), step));
    }

    private static Figure number(Effective effective) {
        return read(effective, Figure.Value::new);
    }

    private static Figure read(Effective effective, LongFunction<Figure> reader) {
        OptionalLong number = TuningNumber.parse(effective.value());
        return number.isPresent()
                ? reader.apply(number.getAsLong())
                : new Figure.DependsOn("what the board makes of a value that is no number");
    }

    /** Whether a key comes to its stock value for sure. */
    private boolean isStock(Effective effective) {
        return effective.state() == EffectiveState.SET
                && StockLines.isStock(key(effective), effective.value(), this, tables);
    }

    private TuningKey key(Effective effective) {
        return tables.vocabulary().findOnCard(effective.key()).orElseThrow();
    }

    private static boolean isIgnored(Effective effective) {
        return effective.state() == EffectiveState.IGNORED;
    }

    /** Whether the setting that raises the key's stock value is in force. */
    private Truth boosted(TuningKey key) {
        return tables.stock().of(key.key(), board.id(), resolution.facts().revisionNumber()).stream()
                .filter(Stock.WithBoost.class::isInstance)
                .map(Stock.WithBoost.class::cast)
                .map(boost -> resolution
                        .tuning(boost.boostKey())
                        .map(effective -> isAt(effective, boost.boostValue()))
                        .orElse(Truth.FALSE))
                .reduce(Truth.FALSE, Truth::or);
    }

    private static Truth isAt(Effective effective, long value) {
        return switch (effective.state()) {
            case SET -> Truth.of(TuningNumber.parse(effective.value()).equals(OptionalLong.of(value)));
            case DEPENDS -> Truth.UNKNOWN;
            case IGNORED -> Truth.FALSE;
        };
    }
}
