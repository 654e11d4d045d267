package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.view.BoardView;
import bootmend.view.EffectiveView;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Prints what a card's config file comes to on several boards side by side: one row a key, one column a board. */
final class BoardsPage {

    /** Above this many boards, those with the same answers share a column. */
    private static final int MOST_COLUMNS = 6;

    private static final int HEADING_WIDTH = 16;

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
        List<List<String>> headings =
                columns.values().stream().map(BoardsPage::heading).toList();
        int height = headings.stream().mapToInt(List::size).max().orElse(1);
        List<List<String>> rows = new ArrayList<>();
        List<String> styles = new ArrayList<>(Collections.nCopies(height - 1, "bold"));
        for (int line = 1; line < height; line++) {
            rows.add(row("", headings, line));
        }
        for (int i = 0; i < keys.size(); i++) {
            rows.add(row(keys.get(i), List.copyOf(columns.keySet()), i));
            styles.add("");
        }
        screen.table(row("key", headings, 0), rows, styles);
    }

    private static List<String> row(String name, List<List<String>> columns, int index) {
        List<String> row = new ArrayList<>(List.of(name));
        columns.forEach(column -> row.add(index < column.size() ? column.get(index) : ""));
        return row;
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

    /** The boards' names over as many lines as they need. */
    private static List<String> heading(List<String> boards) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String board : boards) {
            if (!line.isEmpty() && line.length() + 1 + board.length() > HEADING_WIDTH) {
                lines.add(line);
                line = "";
            }
            line = line.isEmpty() ? board : line + " " + board;
        }
        lines.add(line);
        return lines;
    }
}
