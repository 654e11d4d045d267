package bootmend.tuning;

import bootmend.config.Truth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The published stock values of each board. */
public final class StockValues {

    private static final String KEY = "key";
    private static final Pattern BOOST = Pattern.compile("(\\d+)\\|(\\d+) with (\\w+)=(\\d+)");

    private static final String SOURCE = "source";
    private static final String FIRMWARE = "the board's boot firmware";

    private final Map<String, List<BoardStock>> byKey;
    private final List<StockChange> changes;

    private StockValues(Map<String, List<BoardStock>> byKey, List<StockChange> changes) {
        this.byKey = byKey;
        this.changes = changes;
    }

    static StockValues read(DataFile file, DataFile changed, Vocabulary vocabulary, Sources sources) {
        List<String> header = file.header();
        if (!header.get(0).equals(KEY) || !header.get(header.size() - 1).equals(SOURCE)) {
            throw new DataFileException(
                    file.name(), 1, "the first column should be " + KEY + " and the last one " + SOURCE);
        }
        file.map(row -> row.required(KEY), key -> key);
        Map<String, List<BoardStock>> byKey = new HashMap<>();
        Map<String, List<BoardRange>> boards = new HashMap<>();
        for (DataRow row : file.rows()) {
            String key = row.required(KEY);
            if (vocabulary
                    .find(key)
                    .filter(known -> known.stock() instanceof StockRule.PerBoard)
                    .isEmpty()) {
                throw row.error(key + " is no key whose stock is per board");
            }
            sources.citation(row, SOURCE);
            byKey.put(key, columns(row, boards, vocabulary));
        }
        List<StockChange> changes = changed.withColumns(KEY, "boards", "number", "when", SOURCE)
                .map(row -> StockChange.read(row, vocabulary, sources), Function.identity());
        return new StockValues(Map.copyOf(byKey), changes);
    }

    /** @param boards what the columns' names mean, as far as it was read */
    private static List<BoardStock> columns(DataRow row, Map<String, List<BoardRange>> boards, Vocabulary vocabulary) {
        List<BoardStock> columns = new ArrayList<>();
        for (String column : row.header().subList(1, row.header().size() - 1)) {
            Stock stock = cell(row, column);
            if (stock instanceof Stock.WithBoost boost
                    && vocabulary.find(boost.boostKey()).isEmpty()) {
                throw row.error(boost.boostKey() + " is no key");
            }
            columns.add(new BoardStock(boards.computeIfAbsent(column, name -> ranges(name, row)), stock));
        }
        return List.copyOf(columns);
    }

    private static List<BoardRange> ranges(String column, DataRow row) {
        return Stream.of(column.split(" "))
                .map(token -> BoardRange.parse(token, row))
                .toList();
    }

    private static Stock cell(DataRow row, String column) {
        String text = row.text(column);
        Matcher boost = BOOST.matcher(text);
        if (text.isEmpty()) {
            return new Stock.NotPublished();
        } else if (text.equals("n/a")) {
            return new Stock.DoesNothing();
        } else if (boost.matches()) {
            return new Stock.WithBoost(
                    row.number(column, boost.group(1)),
                    row.number(column, boost.group(2)),
                    boost.group(3),
                    row.number(column, boost.group(4)));
        }
        return new Stock.Value(row.number(column, text));
    }

    /** The published values of a key, one entry a column of the table; empty where the table has no such key. */
    public List<BoardStock> perBoard(String key) {
        return byKey.getOrDefault(key, List.of());
    }

    /**
     * What a key's stock can be on a board: one entry, or one for each revision's column where the revision is not
     * given and the columns differ; then those that came later.
     */
    public List<Stock> of(String key, String boardId, OptionalInt revision) {
        List<Stock> found = new ArrayList<>();
        for (BoardStock column : perBoard(key)) {
            if (column.mayBeOf(boardId, revision) && !found.contains(column.stock())) {
                found.add(column.stock());
            }
        }
        if (found.isEmpty()) {
            found.add(new Stock.NotPublished());
        }
        found.addAll(changes(key, boardId));
        return List.copyOf(found);
    }

    /** Whether a value is stock of a key, or of one that it sets, on some board. */
    public boolean isSomewhere(TuningKey key, long number) {
        if (key.stock() instanceof StockRule.Plain plain && plain.value() == number) {
            return true;
        }
        return Stream.concat(Stream.of(key.key()), key.sets().stream())
                        .flatMap(each -> perBoard(each).stream())
                        .anyMatch(column -> column.stock() instanceof Stock.Value value && value.number() == number
                                || column.stock() instanceof Stock.WithBoost boost
                                        && (boost.number() == number || boost.boosted() == number))
                || changes.stream()
                        .anyMatch(change -> change.key().equals(key.key())
                                && change.stock().number().orElse(number - 1) == number);
    }

    /** What a key's stock came to be on a board after the table was published; empty for most. */
    public List<Stock.Changed> changes(String key, String boardId) {
        return changes.stream()
                .filter(change -> change.key().equals(key)
                        && change.boards().contains(boardId, OptionalInt.empty()) == Truth.TRUE)
                .map(StockChange::stock)
                .toList();
    }

    /**
     * A key's stock value on a board, in the key's unit.
     *
     * @param boosted whether the setting that raises it is in force, for the values that have one
     */
    public Figure figure(TuningKey key, String boardId, OptionalInt revision, Truth boosted) {
        List<Figure> figures = stocks(key, boardId, revision).stream()
                .map(stock -> figure(stock, key.key(), boardId, boosted))
                .distinct()
                .toList();
        if (figures.size() == 1) {
            return figures.get(0);
        }
        return new Figure.DependsOn(changes(key.key(), boardId).isEmpty() ? "the revision of the board" : FIRMWARE);
    }

    /**
     * Every value that a key's stock may have on a board, in the key's unit: one where it is known, several where it
     * hangs on the revision, on the boot firmware, or on whether the setting that raises it is in force.
     */
    public List<Figure> figures(TuningKey key, String boardId, OptionalInt revision, Truth boosted) {
        List<Truth> ways = boosted == Truth.UNKNOWN ? List.of(Truth.FALSE, Truth.TRUE) : List.of(boosted);
        return stocks(key, boardId, revision).stream()
                .flatMap(stock -> ways.stream().map(way -> figure(stock, key.key(), boardId, way)))
                .distinct()
                .toList();
    }

    private List<Stock> stocks(TuningKey key, String boardId, OptionalInt revision) {
        if (key.stock() instanceof StockRule.PerBoard) {
            return of(key.key(), boardId, revision);
        }
        Stock same = key.stock() instanceof StockRule.Plain plain
                ? new Stock.Value(plain.value())
                : new Stock.NotPublished();
        return Stream.concat(Stream.of(same), changes(key.key(), boardId).stream())
                .toList();
    }

    private static Figure figure(Stock stock, String key, String boardId, Truth boosted) {
        if (stock instanceof Stock.Value value) {
            return new Figure.Value(value.number());
        } else if (stock instanceof Stock.WithBoost boost) {
            return switch (boosted) {
                case TRUE -> new Figure.Value(boost.boosted());
                case FALSE -> new Figure.Value(boost.number());
                case UNKNOWN -> new Figure.DependsOn("whether " + boost.boostKey() + " is " + boost.boostValue());
            };
        } else if (stock instanceof Stock.Changed changed) {
            return changed.number().isPresent()
                    ? new Figure.Value(changed.number().getAsLong())
                    : new Figure.DependsOn(FIRMWARE + ": " + changed.when());
        } else if (stock instanceof Stock.DoesNothing) {
            return new Figure.NotPublished(key + " does nothing on " + boardId);
        }
        return new Figure.NotPublished("no stock value of " + key + " on " + boardId);
    }
}
