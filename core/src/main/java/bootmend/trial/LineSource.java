package bootmend.trial;

import java.io.IOException;
import java.io.Reader;
import java.util.Optional;

/** Reads lines of a text of any size without ever holding more than one line's limit of it. */
final class LineSource {

    /** Characters of a line that are kept; more than any honest log has. */
    static final int MAX_LENGTH = 1000;

    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final Reader reader;
    private boolean first = true;

    /** @param reader buffered */
    LineSource(Reader reader) {
        this.reader = reader;
    }

    /**
     * A line.
     *
     * @param text without its line end, cut at {@link #MAX_LENGTH}
     * @param cut whether it went on
     * @param torn whether the text ends without a line end
     */
    record Line(String text, boolean cut, boolean torn) {}

    Optional<Line> next() throws IOException {
        StringBuilder text = new StringBuilder();
        boolean cut = false;
        int character = reader.read();
        if (character < 0) {
            return Optional.empty();
        }
        if (first && character == BYTE_ORDER_MARK) {
            character = reader.read();
        }
        first = false;
        while (character >= 0 && character != '\n') {
            if (text.length() < MAX_LENGTH) {
                text.append((char) character);
            } else {
                cut = true;
            }
            character = reader.read();
        }
        if (!text.isEmpty() && text.charAt(text.length() - 1) == '\r') {
            text.setLength(text.length() - 1);
        }
        return Optional.of(new Line(text.toString(), cut, character < 0));
    }
}
