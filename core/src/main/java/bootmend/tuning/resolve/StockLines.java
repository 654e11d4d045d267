package bootmend.tuning.resolve;

import bootmend.config.Truth;
import bootmend.tuning.Figure;
import bootmend.tuning.StockRule;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.UnaryOperator;

/**
 * Tells which tuning lines hold the published stock value on the boards that a card is for.
 *
 * <p>A line is at stock where some board reads it and its value is the one published stock value on each that does; where
 * several values may be stock, or none is published, it is not told to be.
 */
public final class StockLines {

    private final Map<Spot, OnBoards> lines = new HashMap<>();

    /** A key on a line; a line with parameters may have several. */
    private record Spot(String path, int line, String key) {}

    /**
     * On which boards a line is at stock.
     *
     * @param atStock ids of boards that read it and on which its value is stock
     * @param byFirmware ids of boards on which it is stock with one boot firmware and not with another
     * @param off ids of boards that read it and on which it is not stock, or may not be for another reason
     */
    public record OnBoards(List<String> atStock, List<String> byFirmware, List<String> off) {

        /** Of a line that no board reads. */
        static final OnBoards NOWHERE = new OnBoards(List.of(), List.of(), List.of());

        public OnBoards {
            atStock = List.copyOf(atStock);
            byFirmware = List.copyOf(byFirmware);
            off = List.copyOf(off);
        }

        /** Whether it is stock on every board that reads it, and some board does. */
        public boolean everywhere() {
            return off.isEmpty() && byFirmware.isEmpty() && !atStock.isEmpty();
        }
    }

    /** One board's view of a line, while boards are gone through. */
    private static final class Tally {
        private final List<String> atStock = new ArrayList<>();
        private final List<String> byFirmware = new ArrayList<>();
        private final List<String> off = new ArrayList<>();
    }

    /**
     * Looks at what a card's config file comes to on each board that it is for.
     *
     * @param boards each of a board that is known
     * @param paths gives the path of a file that an include line names
     */
    public static StockLines of(TuningTables tables, Iterable<Resolution> boards, UnaryOperator<String> paths) {
        StockLines stock = new StockLines();
        Map<Spot, Tally> tallies = new HashMap<>();
        for (Resolution resolution : boards) {
            AgainstStock numbers = new AgainstStock(tables, resolution);
            String board = resolution.facts().board().orElseThrow().id();
            Map<Spot, Truth> here = new HashMap<>();
            Map<String, Truth> known = new HashMap<>();
            for (LineOutcome line : resolution.lines()) {
                if (counts(line)) {
                    Spot spot = new Spot(
                            paths.apply(line.source().file()),
                            line.source().line().number(),
                            line.key().key());
                    Truth same = known.computeIfAbsent(
                            line.key().key() + "=" + line.value(),
                            none -> stock(line.key(), line.value(), numbers, tables));
                    here.merge(spot, same, Truth::and);
                }
            }
            here.forEach((spot, same) -> {
                Tally tally = tallies.computeIfAbsent(spot, none -> new Tally());
                switch (same) {
                    case TRUE -> tally.atStock.add(board);
                    case UNKNOWN -> tally.byFirmware.add(board);
                    case FALSE -> tally.off.add(board);
                }
            });
        }
        tallies.forEach(
                (spot, tally) -> stock.lines.put(spot, new OnBoards(tally.atStock, tally.byFirmware, tally.off)));
        return stock;
    }

    private static boolean counts(LineOutcome line) {
        return switch (line.effect()) {
            case IN_FORCE, DEPENDS, OVERRIDDEN -> true;
            case IGNORED, OTHER_BOARD, NEVER_APPLIES -> false;
        };
    }

    /** Whether a value is a key's stock on a board; unknown where that hangs on the boot firmware. */
    private static Truth stock(TuningKey key, String value, AgainstStock numbers, TuningTables tables) {
        if (isStock(key, value, numbers, tables)) {
            return Truth.TRUE;
        }
        OptionalLong number = TuningNumber.parse(value);
        return number.isPresent() && numbers.isStockOfSomeFirmware(key, number.getAsLong())
                ? Truth.UNKNOWN
                : Truth.FALSE;
    }

    /** Whether a value is the one value that a key's stock can have on a board. */
    static boolean isStock(TuningKey key, String value, AgainstStock numbers, TuningTables tables) {
        OptionalLong number = TuningNumber.parse(value);
        if (number.isEmpty()) {
            return false;
        }
        if (!key.sets().isEmpty() && key.stock() instanceof StockRule.PerBoard) {
            return key.sets().stream()
                            .flatMap(set -> tables.vocabulary().find(set).stream())
                            .filter(set -> numbers.reads(set) != Truth.FALSE)
                            .map(set -> Truth.of(isStock(set, value, numbers, tables)))
                            .reduce(Truth::and)
                            .orElse(Truth.FALSE)
                    == Truth.TRUE;
        }
        return numbers.stock(key).stream()
                .allMatch(stock -> stock instanceof Figure.Value known && known.value() == number.getAsLong());
    }

    /** Where a line is at stock; no list has a board where no board that the card is for reads it. */
    public OnBoards of(String path, int line, String key) {
        return lines.getOrDefault(new Spot(path, line, key), OnBoards.NOWHERE);
    }

    /** Whether a line is at stock on every board that reads it, and some board does. */
    public boolean isAtStock(String path, int line, String key) {
        return of(path, line, key).everywhere();
    }
}
