package bootmend.view;

import bootmend.tuning.Board;
import bootmend.tuning.Figure;
import bootmend.tuning.Stock;
import bootmend.tuning.StockRule;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.AgainstStock;
import bootmend.tuning.resolve.Resolution;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Says in a few words what stock is for a tuning line, where that is published. */
final class StockWords {

    private final TuningTables tables;

    StockWords(TuningTables tables) {
        this.tables = tables;
    }

    /** A number where there is one for every board the line is for, else the range over the boards; empty if unpublished. */
    Optional<String> of(TuningLine line) {
        StockRule rule = line.tuningKey().stock();
        if (rule instanceof StockRule.NotPublished) {
            return Optional.empty();
        }
        String key = line.tuningKey().key();
        List<String> boards = sectionBoard(line)
                .map(List::of)
                .orElseGet(() -> tables.boards().all().stream().map(Board::id).toList());
        List<Long> values = new ArrayList<>();
        if (rule instanceof StockRule.Plain plain) {
            values.add(plain.value());
            boards.forEach(
                    board -> values.addAll(values(List.copyOf(tables.stock().changes(key, board)))));
        } else {
            boards.forEach(board -> values.addAll(values(tables.stock().of(key, board, OptionalInt.empty()))));
        }
        if (values.isEmpty()) {
            return Optional.empty();
        }
        long low = values.stream().mapToLong(Long::longValue).min().orElseThrow();
        long high = values.stream().mapToLong(Long::longValue).max().orElseThrow();
        return Optional.of(low == high ? Long.toString(low) : low + " to " + high + " by board");
    }

    /** A key's stock on a board: a number, or those it may be; empty where it is not published. */
    Optional<String> on(Resolution resolution, String key) {
        List<String> values = tables
                .vocabulary()
                .findOnCard(key)
                .map(known -> new AgainstStock(tables, resolution).stock(known))
                .orElse(List.of())
                .stream()
                .filter(Figure.Value.class::isInstance)
                .map(Figure.Value.class::cast)
                .map(figure -> Long.toString((long) figure.value()))
                .toList();
        return values.isEmpty() ? Optional.empty() : Optional.of(String.join(" or ", values));
    }

    private Optional<String> sectionBoard(TuningLine line) {
        return line.section()
                .map(section -> section.replaceAll("[\\[\\]]", ""))
                .filter(name -> tables.boards().find(name).isPresent());
    }

    private static List<Long> values(List<Stock> stocks) {
        List<Long> values = new ArrayList<>();
        for (Stock stock : stocks) {
            if (stock instanceof Stock.Value value) {
                values.add(value.number());
            } else if (stock instanceof Stock.WithBoost boost) {
                values.add(boost.number());
                values.add(boost.boosted());
            } else if (stock instanceof Stock.Changed changed) {
                changed.number().ifPresent(values::add);
            }
        }
        return values;
    }
}
