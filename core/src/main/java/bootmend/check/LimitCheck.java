package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.Figure;
import bootmend.tuning.Reach;
import bootmend.tuning.Stock;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.AgainstStock;
import bootmend.tuning.resolve.Candidate;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import java.util.stream.Stream;

/**
 * Values that no board of the kind is published to reach, or that contradict each other: most likely a slip of the pen.
 *
 * <p>That a clock beyond twice the stock is one: common practice, no source. Limits of boards: the table of reaches.
 */
record LimitCheck(TuningTables tables) implements Check {

    private static final String FLOOR = "_min";
    private static final String CLOCK_UNIT = "MHz";
    private static final String STEP = "step";
    private static final long MOST_TIMES_STOCK = 2;

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            AgainstStock numbers = new AgainstStock(tables, board.resolution());
            // A line that sets several keys is told about once.
            Map<Place, Remark> implausible = new LinkedHashMap<>();
            for (TuningKey key : tables.vocabulary().keys()) {
                for (Candidate line : board.possible(key.key())) {
                    OptionalLong value = TuningNumber.parse(line.value());
                    if (value.isPresent()) {
                        steps(board, key, line, value.getAsLong()).ifPresent(remarks::add);
                        clock(board, key, line, value.getAsLong(), numbers)
                                .ifPresent(remark -> implausible.putIfAbsent(remark.where(), remark));
                        reach(board, key, line, value.getAsLong()).forEach(remarks::add);
                    }
                }
                floor(board, key, numbers).forEach(remarks::add);
            }
            remarks.addAll(implausible.values());
        }
        return remarks;
    }

    /** A voltage step that is not defined. */
    private static Optional<Remark> steps(BoardReading board, TuningKey key, Candidate line, long value) {
        boolean undefined = key.unit().equals(STEP)
                && (value < key.min().orElse(value) || value > key.max().orElse(value));
        return undefined
                ? Optional.of(Remark.on(
                        board,
                        "voltage-step-undefined",
                        Places.of(line),
                        line.setBy() + "=" + line.written() + " is outside the steps that are defined, "
                                + key.min().getAsLong() + " to " + key.max().getAsLong() + "."))
                : Optional.empty();
    }

    private Optional<Remark> clock(
            BoardReading board, TuningKey key, Candidate line, long value, AgainstStock numbers) {
        if (!key.unit().equals(CLOCK_UNIT)) {
            return Optional.empty();
        }
        // A floor as high as the clock itself is how some hold a clock; it is what the clock may be that bounds both.
        TuningKey bounding = ceiling(key).orElse(key);
        OptionalLong own = known(numbers.stock(bounding)).max();
        long most = own.orElseGet(() -> highestStock(bounding).orElse(Long.MAX_VALUE / MOST_TIMES_STOCK));
        return value > most * MOST_TIMES_STOCK
                ? Optional.of(Remark.on(
                        board,
                        "clock-implausible",
                        Places.of(line),
                        line.setBy() + "=" + line.written() + " is more than twice "
                                + (own.isPresent() ? "the stock clock" : "the highest stock clock of any board") + ", "
                                + most + " MHz."))
                : Optional.empty();
    }

    /** The highest that is published of a key on any board. */
    private OptionalLong highestStock(TuningKey key) {
        return tables.stock().perBoard(key.key()).stream()
                .map(column -> column.stock())
                .flatMapToLong(stock -> stock instanceof Stock.Value value
                        ? LongStream.of(value.number())
                        : stock instanceof Stock.WithBoost boost ? LongStream.of(boost.boosted()) : LongStream.empty())
                .max();
    }

    private Stream<Remark> reach(BoardReading board, TuningKey key, Candidate line, long value) {
        return tables.reaches().of(key.key(), board.id()).stream()
                .filter(reach -> reach.isPassedBy(value))
                .map(reach -> Remark.on(
                        board,
                        rule(reach.kind()),
                        Places.of(line),
                        line.setBy() + "=" + line.written() + " is beyond "
                                + (value < reach.min().orElse(value) ? reach.min() : reach.max()).getAsLong() + " for "
                                + key.key() + ": " + reach.why() + "."));
    }

    private static String rule(Reach.Kind kind) {
        return switch (kind) {
            case HANGS, HELD -> "value-beyond-reach";
            case REPORTED -> "value-perhaps-beyond-reach";
            case UNSUPPORTED -> "raising-not-supported";
        };
    }

    /** A floor above every ceiling that may hold, or a ceiling under the floor that holds without a line. */
    private Stream<Remark> floor(BoardReading board, TuningKey floor, AgainstStock numbers) {
        if (!floor.key().endsWith(FLOOR) || !floor.unit().equals(CLOCK_UNIT)) {
            return Stream.empty();
        }
        Optional<TuningKey> ceiling = ceiling(floor);
        if (ceiling.isEmpty()) {
            return Stream.empty();
        }
        List<TuningKey> ceilings = ceiling.get().sets().isEmpty()
                ? List.of(ceiling.get())
                : ceiling.get().sets().stream()
                        .flatMap(key -> tables.vocabulary().find(key).stream())
                        .toList();
        List<Long> highest = new ArrayList<>();
        for (TuningKey each : ceilings) {
            Optional<List<Long>> values = values(board, each, numbers);
            if (values.isEmpty()) {
                return Stream.empty();
            }
            highest.addAll(values.get());
        }
        long most = highest.stream().mapToLong(Long::longValue).max().orElse(Long.MAX_VALUE);
        List<Candidate> floors = board.possible(floor.key());
        if (floors.isEmpty()) {
            return underFloor(board, floor, ceiling.get(), numbers);
        }
        return floors.stream()
                .filter(line -> TuningNumber.parse(line.value()).orElse(most) > most)
                .map(line -> Remark.on(
                        board,
                        "floor-above-ceiling",
                        Places.of(line),
                        line.setBy() + "=" + line.written() + " is above the highest that "
                                + ceiling.get().key() + " may be, " + most + "."));
    }

    /** Of a floor, the key of the clock that it is the floor of. */
    private Optional<TuningKey> ceiling(TuningKey key) {
        return key.key().endsWith(FLOOR)
                ? tables.vocabulary().find(key.key().substring(0, key.key().length() - FLOOR.length()))
                : Optional.empty();
    }

    private static Stream<Remark> underFloor(
            BoardReading board, TuningKey floor, TuningKey ceiling, AgainstStock numbers) {
        OptionalLong least = known(numbers.stock(floor)).min();
        return least.isEmpty()
                ? Stream.empty()
                : board.possible(ceiling.key()).stream()
                        .filter(line -> TuningNumber.parse(line.value()).orElse(least.getAsLong()) < least.getAsLong())
                        .map(line -> Remark.on(
                                board,
                                "ceiling-below-floor",
                                Places.of(line),
                                line.setBy() + "=" + line.written() + " is below the floor, " + floor.key()
                                        + ", which is " + least.getAsLong() + " at stock."));
    }

    /** Every value that a key may come to, stock among them; empty where one of them is not known. */
    private static Optional<List<Long>> values(BoardReading board, TuningKey key, AgainstStock numbers) {
        List<Long> values = new ArrayList<>();
        Optional<Effective> effective = board.resolution().tuning(key.key());
        for (Candidate line : BoardReading.possible(effective)) {
            OptionalLong value = TuningNumber.parse(line.value());
            if (value.isEmpty()) {
                return Optional.empty();
            }
            values.add(value.getAsLong());
        }
        boolean ignored =
                effective.filter(each -> each.state() == EffectiveState.IGNORED).isPresent();
        if (values.isEmpty() && !ignored
                || effective.filter(Effective::mayBeStock).isPresent()) {
            for (Figure stock : numbers.stock(key)) {
                if (numbers.does(key) && !(stock instanceof Figure.Value)) {
                    return Optional.empty();
                }
                known(List.of(stock)).forEach(values::add);
            }
        }
        return Optional.of(values);
    }

    private static LongStream known(List<Figure> figures) {
        return figures.stream().filter(Figure.Value.class::isInstance).mapToLong(figure ->
                (long) ((Figure.Value) figure).value());
    }
}
