package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.view.BoardView;
import bootmend.view.EffectiveView;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Prints what a card's config file comes to on several boards side by side: one row a key, one column a board. */
final class BoardsPage {

    /** Above this many boards, those with the same answers share a column. */
    private static final int MOST_COLUMNS = 6;

    private final Screen screen;

    BoardsPage(Screen screen) {
        this.screen = screen;
    }

    void print(List<BoardView> boards, List<String> keys) {
        Map<List<String>, List<String>> columns = new LinkedHashMap<>();
        for (BoardView board : boards) {
            List<String> cells = new ArrayList<>(cells(board, keys));
            if (boards.size() <= MOST_COLUMNS) {
                // The board's own name keeps its column apart.
                cells.add(board.board());
            }
            columns.computeIfAbsent(cells, same -> new ArrayList<>()).add(board.board());
        }
        table(keys, columns);
    }

    private void table(List<String> keys, Map<List<String>, List<String>> columns) {
        List<String> header = new ArrayList<>(List.of("key"));
        columns.values().forEach(boards -> header.add(String.join(" ", boards)));
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < keys.size(); i++) {
            List<String> row = new ArrayList<>(List.of(keys.get(i)));
            for (List<String> column : columns.keySet()) {
                row.add(column.get(i));
            }
            rows.add(row);
        }
        screen.table(header, rows);
    }

    private static List<String> cells(BoardView board, List<String> keys) {
        Map<String, String> byKey = board.effective().stream()
                .collect(Collectors.toMap(EffectiveView::key, BoardsPage::cell, (first, second) -> first));
        return keys.stream().map(key -> byKey.getOrDefault(key, "stock")).toList();
    }

    private static String cell(EffectiveView each) {
        return switch (each.state()) {
            case "ignored" -> "ignored";
            case "depends" -> "depends: " + Amount.of(each.value(), each.unit());
            default -> Amount.of(each.value(), each.unit());
        };
    }
}
