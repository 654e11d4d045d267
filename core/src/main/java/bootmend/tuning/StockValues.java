package bootmend.tuning;

import bootmend.config.Truth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** The published stock clocks of each board. */
public final class StockValues {

    private static final String KEY = "key";

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
        for (DataRow row : file.rows()) {
            String key = row.required(KEY);
            if (vocabulary.find(key).filter(known -> known.stock() instanceof StockRule.PerBoard).isEmpty()) {
                throw row.error(key + " is no key whose stock is per board");
            }
            byKey.put(key, columns(row));
        }
        return new StockValues(Map.copyOf(byKey));
    }

    private static List<BoardStock> columns(DataRow row) {
        List<BoardStock> columns = new ArrayList<>();
        for (String column : row.header().subList(1, row.header().size())) {
            List<BoardRange> boards = List.of(column.split(" +")).stream()
                    .map(token -> BoardRange.parse(token, row)).toList();
            columns.add(new BoardStock(boards, cell(row, column)));
        }
        return List.copyOf(columns);
    }

    private static Stock cell(DataRow row, String column) {
        String text = row.text(column);
        int bar = text.indexOf('|');
        if (text.isEmpty()) {
            return new Stock.NotPublished();
        } else if (text.equals("n/a")) {
            return new Stock.DoesNothing();
        } else if (bar >= 0) {
            return new Stock.WithBoost(row.number(column, text.substring(0, bar)),
                    row.number(column, text.substring(bar + 1)));
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
        List<Stock> found = perBoard(key).stream()
                .filter(column -> column.boards().stream()
                        .anyMatch(range -> range.contains(boardId, revision) != Truth.FALSE))
                .map(BoardStock::stock).distinct().toList();
        return found.isEmpty() ? List.of(new Stock.NotPublished()) : found;
    }
}
