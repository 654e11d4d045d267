package bootmend.tuning;

import bootmend.config.Truth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The published stock clocks of each board. */
public final class StockValues {

    private static final String KEY = "key";
    private static final Pattern BOOST = Pattern.compile("(\\d+)\\|(\\d+) with (\\w+)=(\\d+)");

    private final Map<String, List<BoardStock>> byKey;

    private StockValues(Map<String, List<BoardStock>> byKey) {
        this.byKey = byKey;
    }

    static StockValues read(DataFile file, Vocabulary vocabulary) {
        if (!file.header().get(0).equals(KEY)) {
            throw new DataFileException(file.name(), 1, "the first column should be " + KEY);
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
            byKey.put(key, columns(row, boards, vocabulary));
        }
        return new StockValues(Map.copyOf(byKey));
    }

    /** @param boards what the columns' names mean, as far as it was read */
    private static List<BoardStock> columns(DataRow row, Map<String, List<BoardRange>> boards, Vocabulary vocabulary) {
        List<BoardStock> columns = new ArrayList<>();
        for (String column : row.header().subList(1, row.header().size())) {
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
     * given and the columns differ.
     */
    public List<Stock> of(String key, String boardId, OptionalInt revision) {
        List<Stock> found = new ArrayList<>();
        for (BoardStock column : perBoard(key)) {
            if (column.mayBeOf(boardId, revision) && !found.contains(column.stock())) {
                found.add(column.stock());
            }
        }
        return found.isEmpty() ? List.of(new Stock.NotPublished()) : List.copyOf(found);
    }

    /**
     * A key's stock value on a board, in the key's unit.
     *
     * @param boosted whether the setting that raises it is in force, for the values that have one
     */
    public Figure figure(TuningKey key, String boardId, OptionalInt revision, Truth boosted) {
        if (key.stock() instanceof StockRule.Plain plain) {
            return new Figure.Value(plain.value());
        } else if (key.stock() instanceof StockRule.NotPublished) {
            return new Figure.NotPublished("no stock value of " + key.key());
        }
        List<Figure> figures = of(key.key(), boardId, revision).stream()
                .map(stock -> figure(stock, key.key(), boardId, boosted))
                .distinct()
                .toList();
        return figures.size() == 1 ? figures.get(0) : new Figure.DependsOn("the revision of the board");
    }

    /**
     * Every value that a key's stock may have on a board, in the key's unit: one where it is known, several where it
     * hangs on the revision or on whether the setting that raises it is in force.
     */
    public List<Figure> figures(TuningKey key, String boardId, OptionalInt revision, Truth boosted) {
        if (!(key.stock() instanceof StockRule.PerBoard)) {
            return List.of(figure(key, boardId, revision, boosted));
        }
        List<Truth> ways = boosted == Truth.UNKNOWN ? List.of(Truth.FALSE, Truth.TRUE) : List.of(boosted);
        return of(key.key(), boardId, revision).stream()
                .flatMap(stock -> ways.stream().map(way -> figure(stock, key.key(), boardId, way)))
                .distinct()
                .toList();
    }

    private static Figure figure(Stock stock, String key, String boardId, Truth boosted) {
        if (stock instanceof Stock.Value value) {
            return new Figure.Value(value.mhz());
        } else if (stock instanceof Stock.WithBoost boost) {
            return switch (boosted) {
                case TRUE -> new Figure.Value(boost.boostedMhz());
                case FALSE -> new Figure.Value(boost.mhz());
                case UNKNOWN -> new Figure.DependsOn("whether " + boost.boostKey() + " is " + boost.boostValue());
            };
        } else if (stock instanceof Stock.DoesNothing) {
            return new Figure.NotPublished(key + " does nothing on " + boardId);
        }
        return new Figure.NotPublished("no stock value of " + key + " on " + boardId);
    }
}
