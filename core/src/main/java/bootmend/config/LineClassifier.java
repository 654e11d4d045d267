package bootmend.config;

import java.nio.charset.StandardCharsets;

/** Says what kind a line is from its bytes, without its line end. */
final class LineClassifier {

    private static final String INCLUDE = "include";
    private static final String INITRAMFS = "initramfs";

    private final byte[] content;
    /** The part that counts, one char a byte, so that an index in it is an index in the line. */
    private final String read;

    private LineClassifier(byte[] content) {
        this.content = content;
        this.read = new String(content, 0, Math.min(content.length, ConfigLine.LIMIT), StandardCharsets.ISO_8859_1);
    }

    static LineKind classify(byte[] content) {
        return new LineClassifier(content).kind();
    }

    private LineKind kind() {
        // No source says whether the board skips blanks at the start of a line. Skipping them is the careful reading:
        // a setting that may count is then shown and reset, at no harm where the board ignores it.
        int start = skipBlanks(0);
        if (start == read.length()) {
            return new LineKind.Blank();
        }
        return switch (read.charAt(start)) {
            case '#' -> comment(start);
            case '[' -> new LineKind.Section(trimmedEnd(start));
            default -> statement(start);
        };
    }

    private LineKind comment(int start) {
        int key = start;
        while (key < read.length() && (read.charAt(key) == '#' || Blanks.is(read.charAt(key)))) {
            key++;
        }
        int equals = read.indexOf('=', key);
        if (equals <= key || !isPlainWord(key, equals)) {
            return new LineKind.Comment();
        }
        return new LineKind.CommentedSetting(text(key, equals), text(equals + 1, read.length()));
    }

    private LineKind statement(int start) {
        if (isWordWithArgument(start, INCLUDE)) {
            return new LineKind.Include(trimmedEnd(skipBlanks(start + INCLUDE.length())));
        }
        int equals = read.indexOf('=', start);
        if (equals <= start || isWordWithArgument(start, INITRAMFS)) {
            return new LineKind.Other();
        }
        return new LineKind.Setting(
                text(start, equals),
                text(equals + 1, read.length()),
                new ByteRange(start, equals),
                new ByteRange(equals + 1, content.length));
    }

    private boolean isWordWithArgument(int start, String word) {
        int end = start + word.length();
        if (!read.startsWith(word, start) || end >= read.length() || !Blanks.is(read.charAt(end))) {
            return false;
        }
        int argument = skipBlanks(end);
        // "include =x" reads as a setting whose key has a blank, not as a file named "=x".
        return argument < read.length() && read.charAt(argument) != '=';
    }

    private boolean isPlainWord(int from, int to) {
        return read.substring(from, to).chars().allMatch(c -> c > ' ' && c < 0x7f);
    }

    private int skipBlanks(int from) {
        int index = from;
        while (index < read.length() && Blanks.is(read.charAt(index))) {
            index++;
        }
        return index;
    }

    private String trimmedEnd(int from) {
        int end = read.length();
        while (end > from && Blanks.is(read.charAt(end - 1))) {
            end--;
        }
        return text(from, end);
    }

    private String text(int from, int to) {
        return CardText.decode(content, new ByteRange(from, to));
    }
}
