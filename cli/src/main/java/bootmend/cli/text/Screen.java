package bootmend.cli.text;

import bootmend.config.VisibleText;
import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine.Help.Ansi;

/** Prints lines, tables and marks; text from a card never reaches the terminal with its control characters. */
public final class Screen {

    private static final int WIDTH = 100;

    private final PrintWriter out;
    private final Ansi ansi;

    public Screen(PrintWriter out, Ansi ansi) {
        this.out = out;
        this.ansi = ansi;
    }

    public void line(String text) {
        out.println(VisibleText.of(text));
    }

    /** A line in a style of picocli's markup, such as {@code bold} or {@code fg(yellow)}, on a terminal that has it. */
    public void line(String style, String text) {
        String visible = VisibleText.of(text);
        out.println(
                ansi.enabled()
                        ? Ansi.Style.on(Ansi.Style.parse(style)) + visible + Ansi.Style.off(Ansi.Style.parse(style))
                        : visible);
    }

    public void blank() {
        out.println();
    }

    /** Columns as wide as their widest cell; {@code styles} gives a row's style, empty for none. */
    public void table(List<String> header, List<List<String>> rows, List<String> styles) {
        int[] widths = new int[header.size()];
        fit(widths, header);
        rows.forEach(row -> fit(widths, row));
        line("bold", row(widths, header));
        for (int i = 0; i < rows.size(); i++) {
            String text = row(widths, rows.get(i));
            if (styles.get(i).isEmpty()) {
                line(text);
            } else {
                line(styles.get(i), text);
            }
        }
    }

    /** A name, then text beside it, broken between words where it would run past 100 columns. */
    public void paragraph(String name, int nameWidth, String text) {
        String start = padded(name, nameWidth);
        StringBuilder line = new StringBuilder(start);
        for (String word : VisibleText.of(text).stripTrailing().split(" ", -1)) {
            if (line.length() > nameWidth && line.length() + word.length() > WIDTH) {
                out.println(line.toString().stripTrailing());
                line = new StringBuilder(" ".repeat(nameWidth));
            }
            line.append(word).append(' ');
        }
        out.println(line.toString().stripTrailing());
    }

    /** Blanks after a text, to make it at least so many characters wide. */
    static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }

    private static void fit(int[] widths, List<String> row) {
        for (int i = 0; i < widths.length; i++) {
            widths[i] = Math.max(widths[i], VisibleText.of(row.get(i)).length());
        }
    }

    private static String row(int[] widths, List<String> cells) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            String cell = VisibleText.of(cells.get(i));
            text.append(cell).append(" ".repeat(widths[i] - cell.length() + 2));
        }
        return text.toString().stripTrailing();
    }
}
