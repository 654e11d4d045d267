package bootmend.cli.text;

import bootmend.config.VisibleText;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Help.Ansi;

/**
 * Prints lines, tables and marks no wider than the terminal; text from a card never reaches it with its control
 * characters.
 */
public final class Screen {

    private final PrintWriter out;
    private final Ansi ansi;
    private final int width;

    /** As wide as the terminal. */
    @SuppressWarnings("SystemConsoleNull") // Newer ones give a console without a terminal too; stty tells then.
    public Screen(PrintWriter out, Ansi ansi) {
        this(out, ansi, new TerminalWidth(System.getenv(), System.console() != null).columns());
    }

    Screen(PrintWriter out, Ansi ansi, int width) {
        this.out = out;
        this.ansi = ansi;
        this.width = width;
    }

    public void line(String text) {
        line("", text);
    }

    /**
     * A text, broken between words where it would be too wide, in a style of picocli's markup, such as {@code bold} or
     * {@code fg(yellow)}, on a terminal that has it; empty for none.
     */
    public void line(String style, String text) {
        String visible = VisibleText.of(text);
        int indent = Columns.indent(visible);
        hanging(style, visible, indent == 0 ? 0 : indent + 2);
    }

    /** A line that is to be copied or compared, and is therefore never broken. */
    public void exact(String text) {
        out.println(VisibleText.of(text));
    }

    public void blank() {
        out.println();
    }

    /** Whether all that was printed so far reached its place; it is flushed for that. */
    public boolean isWhole() {
        return !out.checkError();
    }

    /** A table without styles. */
    public void table(List<String> header, List<List<String>> rows) {
        table(header, rows, rows.stream().map(row -> "").toList());
    }

    /**
     * Columns as wide as their widest cell, or narrower where the table would be too wide; where it would be even so, a
     * block a row. {@code styles} gives a row's style, empty for none.
     */
    public void table(List<String> header, List<List<String>> rows, List<String> styles) {
        List<List<String>> all = new ArrayList<>(List.of(visible(header)));
        rows.forEach(row -> all.add(visible(row)));
        Columns columns = new Columns(all, width);
        if (columns.fits()) {
            columns.lines(all.get(0)).forEach(line -> styled("bold", line));
            for (int i = 0; i < rows.size(); i++) {
                String style = styles.get(i);
                columns.lines(all.get(i + 1)).forEach(line -> styled(style, line));
            }
        } else {
            int names = header.stream().mapToInt(String::length).max().orElse(0) + 2;
            for (int i = 0; i < rows.size(); i++) {
                if (i > 0) {
                    blank();
                }
                block(all.get(0), all.get(i + 1), names, styles.get(i));
            }
        }
    }

    /** A name, then text beside it, broken between words where it would be too wide. */
    public void paragraph(String name, int nameWidth, String text) {
        hanging("", padded(name, nameWidth) + VisibleText.of(text), nameWidth);
    }

    /** Blanks after a text, to make it at least so many characters wide. */
    static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }

    private void block(List<String> header, List<String> row, int names, String style) {
        for (int i = 0; i < header.size(); i++) {
            if (!row.get(i).isBlank()) {
                hanging(
                        i == 0 ? style : "",
                        padded(header.get(i), names) + row.get(i).strip(),
                        names);
            }
        }
    }

    private void hanging(String style, String text, int indent) {
        int name = Math.min(indent, text.length());
        List<String> lines = Columns.wrap(text.substring(name), width - indent);
        styled(style, (text.substring(0, name) + lines.get(0)).stripTrailing());
        for (String line : lines.subList(1, lines.size())) {
            styled(style, " ".repeat(indent) + line);
        }
    }

    private void styled(String style, String line) {
        out.println(
                style.isEmpty() || !ansi.enabled()
                        ? line
                        : Ansi.Style.on(Ansi.Style.parse(style)) + line + Ansi.Style.reset.on());
    }

    private static List<String> visible(List<String> cells) {
        return cells.stream().map(VisibleText::of).toList();
    }
}
