package bootmend.cli.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Lays a table out in no more than a width: cells that are too long go on below, between words; no word is cut. */
final class Columns {

    private static final int GAP = 2;

    private final int[] widths;
    private final boolean fits;

    /** @param rows the header among them, each as long as the others */
    Columns(List<List<String>> rows, int width) {
        int columns = rows.get(0).size();
        int[] least = new int[columns];
        widths = new int[columns];
        for (List<String> row : rows) {
            for (int i = 0; i < columns; i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
                least[i] = Math.max(least[i], longestWord(row.get(i)));
            }
        }
        int over = Arrays.stream(widths).sum() + GAP * (columns - 1) - width;
        while (over > 0) {
            int widest = widestThatGives(least);
            if (widest < 0) {
                break;
            }
            widths[widest]--;
            over--;
        }
        fits = over <= 0;
    }

    /** Whether the table keeps to the width. */
    boolean fits() {
        return fits;
    }

    /** A row's lines. */
    List<String> lines(List<String> cells) {
        List<List<String>> wrapped = new ArrayList<>();
        int height = 1;
        for (int i = 0; i < widths.length; i++) {
            wrapped.add(wrap(cells.get(i), widths[i]));
            height = Math.max(height, wrapped.get(i).size());
        }
        List<String> lines = new ArrayList<>();
        for (int line = 0; line < height; line++) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String cell = line < wrapped.get(i).size() ? wrapped.get(i).get(line) : "";
                text.append(cell).append(" ".repeat(Math.max(0, widths[i] - cell.length()) + GAP));
            }
            lines.add(text.toString().stripTrailing());
        }
        return lines;
    }

    /** Breaks a text between words into lines no longer than a width; a word that is longer has a line of its own. */
    static List<String> wrap(String text, int width) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (rest.length() > width) {
            int blank = rest.lastIndexOf(' ', width);
            // A line of nothing but an indent says nothing; its word then stands beside it, however long.
            if (blank < 0 || rest.substring(0, blank).isBlank()) {
                blank = rest.indexOf(' ', indent(rest));
            }
            if (blank < 0) {
                break;
            }
            lines.add(rest.substring(0, blank).stripTrailing());
            rest = rest.substring(blank).stripLeading();
        }
        if (lines.isEmpty() || !rest.isEmpty()) {
            lines.add(rest);
        }
        return lines;
    }

    /** How many blanks a text begins with. */
    static int indent(String text) {
        return text.length() - text.stripLeading().length();
    }

    private int widestThatGives(int[] least) {
        int widest = -1;
        for (int i = 0; i < widths.length; i++) {
            if (widths[i] > least[i] && (widest < 0 || widths[i] > widths[widest])) {
                widest = i;
            }
        }
        return widest;
    }

    private static int longestWord(String cell) {
        return indent(cell)
                + Arrays.stream(cell.strip().split(" +", -1))
                        .mapToInt(String::length)
                        .max()
                        .orElse(0);
    }
}
