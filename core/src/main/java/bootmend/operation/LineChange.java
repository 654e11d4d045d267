package bootmend.operation;

import bootmend.config.CardText;
import bootmend.config.LineEnd;
import java.util.Arrays;
import java.util.Optional;

/**
 * One line of a file before and after a change, with every byte.
 *
 * @param line its number before the change, from 1; a new line has the number of the line it is put in front of
 * @param old empty where the line is new
 * @param changed empty where the line is taken out
 */
public record LineChange(String file, int line, Optional<Line> old, Optional<Line> changed) {

    /**
     * A line as it stands in a file.
     *
     * @param bytes without its line end; a byte-order mark belongs to the first line
     */
    public record Line(byte[] bytes, LineEnd end) {

        String text() {
            return CardText.decode(bytes);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Line line && end == line.end && Arrays.equals(bytes, line.bytes);
        }

        @Override
        public int hashCode() {
            return 31 * Arrays.hashCode(bytes) + end.hashCode();
        }
    }

    /** The line's text before, not yet safe to show; empty where the line is new. */
    public Optional<String> before() {
        return old.map(line -> text(line));
    }

    /** The line's text after, not yet safe to show; empty where the line is taken out. */
    public Optional<String> after() {
        return changed.map(line -> text(line));
    }

    /** Where nothing but the line's end changes, words say so. */
    private String text(Line line) {
        boolean endAlone = old.isPresent()
                && changed.isPresent()
                && old.get().end() != changed.get().end()
                && Arrays.equals(old.get().bytes(), changed.get().bytes());
        return endAlone ? line.text() + " (" + words(line.end()) + ")" : line.text();
    }

    private static String words(LineEnd end) {
        return end == LineEnd.NONE ? "no line end" : "line end " + end.name();
    }
}
