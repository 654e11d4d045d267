package bootmend.config;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A config file as an immutable list of lines that keeps every byte: {@code parse(b).toBytes()} equals {@code b}.
 *
 * <p>Line numbers count from 1. An edit returns a new document and changes only the lines it names; a line number the
 * document does not have, or text that would not stay on its line, is an {@link IllegalArgumentException}.
 */
public final class ConfigDocument {

    private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    private final boolean hasByteOrderMark;
    private final List<ConfigLine> lines;

    private ConfigDocument(boolean hasByteOrderMark, List<ConfigLine> lines) {
        this.hasByteOrderMark = hasByteOrderMark;
        this.lines = lines;
    }

    /** Reads any bytes; never fails. */
    public static ConfigDocument parse(byte[] bytes) {
        int mark = BYTE_ORDER_MARK.length;
        boolean marked = bytes.length >= mark && Arrays.equals(bytes, 0, mark, BYTE_ORDER_MARK, 0, mark);
        return new ConfigDocument(marked, LineSplitter.split(bytes, marked ? mark : 0));
    }

    /** The file's bytes. */
    public byte[] toBytes() {
        ByteArrayOutputStream out = start();
        lines.forEach(line -> line.writeTo(out));
        return out.toByteArray();
    }

    public List<ConfigLine> lines() {
        return lines;
    }

    /** Line {@code number}, counted from 1. */
    public ConfigLine line(int number) {
        if (number < 1 || number > lines.size()) {
            throw new IllegalArgumentException("The config file has " + lines.size() + " lines, no line " + number
                    + "; read it again, it may have changed.");
        }
        return lines.get(number - 1);
    }

    /** Whether the file starts with a UTF-8 byte-order mark; it belongs to the file, not to line 1. */
    public boolean hasByteOrderMark() {
        return hasByteOrderMark;
    }

    /** The line end that most lines have; LF where no line has one, and the earlier constant on a tie. */
    public LineEnd mainLineEnd() {
        Map<LineEnd, Long> counts = lines.stream()
                .map(ConfigLine::end)
                .filter(end -> end != LineEnd.NONE)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        LineEnd best = LineEnd.LF;
        for (LineEnd end : LineEnd.values()) {
            if (counts.getOrDefault(end, 0L) > counts.getOrDefault(best, 0L)) {
                best = end;
            }
        }
        return best;
    }

    /** Puts {@code #} in front of one line; a blank line or a comment stays as it is. */
    public ConfigDocument commentOut(int lineNumber) {
        return commentOut(List.of(lineNumber));
    }

    /** Puts {@code #} in front of each of these lines; blank lines and comments stay as they are. */
    public ConfigDocument commentOut(Collection<Integer> lineNumbers) {
        Set<Integer> chosen = checked(lineNumbers);
        ByteArrayOutputStream out = start();
        for (ConfigLine line : lines) {
            if (chosen.contains(line.number()) && line.isLive()) {
                out.write('#');
            }
            line.writeTo(out);
        }
        return parse(out.toByteArray());
    }

    /**
     * Takes the {@code #} in front of each of these lines away, however many there are, with the blanks behind them; live
     * and blank lines stay as they are.
     */
    public ConfigDocument uncomment(Collection<Integer> lineNumbers) {
        Set<Integer> chosen = checked(lineNumbers);
        ByteArrayOutputStream out = start();
        for (ConfigLine line : lines) {
            if (chosen.contains(line.number()) && line.isComment()) {
                out.writeBytes(line.uncommented());
                out.writeBytes(line.end().bytes());
            } else {
                line.writeTo(out);
            }
        }
        return parse(out.toByteArray());
    }

    /** Takes one line out with its line end. */
    public ConfigDocument remove(int lineNumber) {
        return remove(List.of(lineNumber));
    }

    /** Takes these lines out with their line ends; the numbers are those of this document. */
    public ConfigDocument remove(Collection<Integer> lineNumbers) {
        Set<Integer> chosen = checked(lineNumbers);
        ByteArrayOutputStream out = start();
        lines.stream().filter(line -> !chosen.contains(line.number())).forEach(line -> line.writeTo(out));
        return parse(out.toByteArray());
    }

    /**
     * Replaces the value of a {@code key=value} line, to the line's end.
     *
     * @throws IllegalArgumentException if the line is no setting, or it would run past {@value ConfigLine#LIMIT} bytes
     */
    public ConfigDocument setValue(int lineNumber, String value) {
        return setValues(Map.of(lineNumber, value));
    }

    /** Replaces the values of several lines, by line number; as {@link #setValue}. */
    public ConfigDocument setValues(Map<Integer, String> values) {
        checked(values.keySet());
        ByteArrayOutputStream out = start();
        for (ConfigLine line : lines) {
            String value = values.get(line.number());
            if (value == null) {
                line.writeTo(out);
            } else {
                writeWithValue(line, value, out);
            }
        }
        return parse(out.toByteArray());
    }

    private static void writeWithValue(ConfigLine line, String value, ByteArrayOutputStream out) {
        if (!(line.kind() instanceof LineKind.Setting setting)) {
            throw new IllegalArgumentException("Line " + line.number() + " of the config file is no key=value line, so"
                    + " it has no value to set; choose another line.");
        }
        byte[] newValue = encoded(value);
        if (setting.valueBytes().from() + newValue.length > ConfigLine.LIMIT) {
            throw tooLong();
        }
        out.write(line.bytes(), 0, setting.valueBytes().from());
        out.writeBytes(newValue);
        out.writeBytes(line.end().bytes());
    }

    /**
     * Puts new lines behind line {@code lineNumber}, or at the top for 0, each with this document's main line end;
     * a last line that had no line end gets one.
     *
     * @throws IllegalArgumentException if a new line holds a control character, or is longer than the board reads and
     *     no comment
     */
    public ConfigDocument insertAfter(int lineNumber, List<String> newLines) {
        if (lineNumber != 0) {
            line(lineNumber);
        }
        ByteArrayOutputStream out = start();
        lines.subList(0, lineNumber).forEach(line -> line.writeTo(out));
        byte[] end = mainLineEnd().bytes();
        if (!newLines.isEmpty() && lineNumber > 0 && line(lineNumber).end() == LineEnd.NONE) {
            out.writeBytes(end);
        }
        for (String text : newLines) {
            byte[] content = encoded(text);
            if (content.length > ConfigLine.LIMIT && !(LineClassifier.classify(content) instanceof LineKind.Comment)) {
                throw tooLong();
            }
            out.writeBytes(content);
            out.writeBytes(end);
        }
        lines.subList(lineNumber, lines.size()).forEach(line -> line.writeTo(out));
        return parse(out.toByteArray());
    }

    /** Puts new lines at the end, where the last section of the file still holds; as {@link #insertAfter}. */
    public ConfigDocument append(List<String> newLines) {
        return insertAfter(lines.size(), newLines);
    }

    private ByteArrayOutputStream start() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        if (hasByteOrderMark) {
            out.writeBytes(BYTE_ORDER_MARK);
        }
        return out;
    }

    private Set<Integer> checked(Collection<Integer> lineNumbers) {
        lineNumbers.forEach(this::line);
        return new TreeSet<>(lineNumbers);
    }

    private static byte[] encoded(String text) {
        if (text.chars().anyMatch(c -> c < ' ' && c != '\t' || c == 0x7f)) {
            throw new IllegalArgumentException("A line of the config file cannot hold the control character in \""
                    + VisibleText.of(text) + "\"; take it out.");
        }
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static IllegalArgumentException tooLong() {
        return new IllegalArgumentException(
                "The line would be longer than the " + ConfigLine.LIMIT + " bytes that the board reads; shorten it.");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ConfigDocument that && Arrays.equals(toBytes(), that.toBytes());
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(toBytes());
    }

    @Override
    public String toString() {
        return lines.stream().map(ConfigLine::toString).collect(Collectors.joining("\n"));
    }
}
