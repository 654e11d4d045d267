package bootmend.view;

import bootmend.config.Truth;
import bootmend.tuning.Board;
import bootmend.tuning.BoardRange;
import bootmend.tuning.BoardStock;
import bootmend.tuning.Stock;
import bootmend.tuning.StockRule;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** Explains tuning keys and boards from the tables, key by key and board by board. */
final class KeyExplainer {

    private static final String NOT_PUBLISHED = "not published";

    private final TuningTables tables;

    KeyExplainer(TuningTables tables) {
        this.tables = tables;
    }

    KeyExplanation explain(TuningKey key) {
        return new KeyExplanation(
                key.key(),
                key.group(),
                key.unit(),
                tables.meanings().of(key.key()).orElse(""),
                key.min(),
                key.max(),
                key.clamped(),
                key.appliesTo(),
                key.sets(),
                key.resets(),
                stock(key),
                key.note(),
                CautionView.of(tables.cautions().about(key.group())),
                key.citation());
    }

    /** None for a key that only sets others, of which each has its own. */
    private List<KeyExplanation.StockOnBoard> stock(TuningKey key) {
        if (!key.sets().isEmpty() && key.stock() instanceof StockRule.PerBoard) {
            return List.of();
        }
        return tables.boards().all().stream()
                .map(board -> new KeyExplanation.StockOnBoard(board.id(), stock(key, board)))
                .toList();
    }

    /** A key's stock on a board in words, without its unit, and what it came to be later. */
    String stock(TuningKey key, Board board) {
        return tables.stock().changes(key.key(), board.id()).stream()
                .map(change -> ", or "
                        + (change.number().isPresent() ? change.number().getAsLong() + " " : "")
                        + change.when())
                .collect(Collectors.joining("", published(key, board), ""));
    }

    private String published(TuningKey key, Board board) {
        if (key.boards().contains(board.id(), OptionalInt.empty()) == Truth.FALSE
                && key.unclear().contains(board.id(), OptionalInt.empty()) == Truth.FALSE) {
            return "not read";
        }
        if (key.stock() instanceof StockRule.Plain plain) {
            return Long.toString(plain.value());
        } else if (key.stock() instanceof StockRule.NotPublished) {
            return NOT_PUBLISHED;
        }
        List<BoardStock> columns = tables.stock().perBoard(key.key()).stream()
                .filter(column -> range(column, board).isPresent())
                .toList();
        if (columns.stream().map(BoardStock::stock).distinct().count() == 1) {
            return words(columns.get(0).stock());
        }
        return columns.isEmpty()
                ? NOT_PUBLISHED
                : columns.stream()
                        .map(column -> words(column.stock())
                                + revisions(range(column, board).orElseThrow()))
                        .collect(Collectors.joining("; "));
    }

    private static Optional<BoardRange> range(BoardStock column, Board board) {
        return column.boards().stream()
                .filter(range -> range.board().equals(board.id()))
                .findFirst();
    }

    private static String revisions(BoardRange range) {
        if (range.coversAllRevisions()) {
            return "";
        }
        return range.minRevision() == 0
                ? " up to revision 1." + range.maxRevision()
                : " from revision 1." + range.minRevision();
    }

    private static String words(Stock stock) {
        if (stock instanceof Stock.Value value) {
            return Long.toString(value.number());
        } else if (stock instanceof Stock.WithBoost boost) {
            return boost.number() + ", or " + boost.boosted() + " with " + boost.boostKey() + "=" + boost.boostValue()
                    + ",";
        }
        return stock instanceof Stock.DoesNothing ? "does nothing there" : NOT_PUBLISHED;
    }
}
