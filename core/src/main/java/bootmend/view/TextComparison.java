package bootmend.view;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineEdit;
import bootmend.config.VisibleText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Two texts side by side, line by line.
 *
 * @param rows in the order of both texts
 * @param rest how many rows more there are than are given
 */
public record TextComparison(List<Row> rows, int rest) {

    /** How many rows are given. No source: a bound against hostile cards. */
    private static final int MOST_ROWS = 2000;

    public TextComparison {
        rows = List.copyOf(rows);
    }

    /** A line of a text, safe to show; {@code number} counts from 1. */
    public record Side(int number, String text) {}

    /**
     * Lines that stand beside each other.
     *
     * @param left empty where only the other text has a line there
     * @param right empty where only the first one has
     */
    public record Row(Optional<Side> left, Optional<Side> right) {

        /** Whether both have the same text. */
        public boolean isSame() {
            return left.map(Side::text).equals(right.map(Side::text));
        }
    }

    /** Compares lines that are safe to show, as {@link #lines} gives them. */
    public static TextComparison of(List<String> left, List<String> right) {
        List<Row> rows = new ArrayList<>();
        int i = 0;
        int j = 0;
        for (LineEdit<String> edit : LineEdit.between(left, right, String::equals)) {
            while (i < edit.at()) {
                rows.add(new Row(side(left, i++), side(right, j++)));
            }
            int endLeft = i + edit.old().size();
            int endRight = j + edit.changed().size();
            while (i < endLeft || j < endRight) {
                rows.add(new Row(
                        i < endLeft ? side(left, i) : Optional.empty(),
                        j < endRight ? side(right, j) : Optional.empty()));
                i = Math.min(endLeft, i + 1);
                j = Math.min(endRight, j + 1);
            }
        }
        while (i < left.size()) {
            rows.add(new Row(side(left, i++), side(right, j++)));
        }
        int shown = Math.min(MOST_ROWS, rows.size());
        return new TextComparison(rows.subList(0, shown), rows.size() - shown);
    }

    private static Optional<Side> side(List<String> lines, int index) {
        return Optional.of(new Side(index + 1, lines.get(index)));
    }

    /** A file's lines, each safe to show. */
    static List<String> lines(byte[] text) {
        return ConfigDocument.parse(text).lines().stream()
                .map(ConfigLine::text)
                .map(VisibleText::of)
                .toList();
    }
}
