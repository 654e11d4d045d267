package bootmend.config;

import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/** Takes typographic quotes out of a line: those round a value away, all others made plain ones. */
final class Quotes {

    /** U+2018 to U+201B as UTF-8, one char a byte. */
    private static final Pattern SINGLE = Pattern.compile("\u00E2\u0080[\u0098-\u009B]");
    /** U+201C to U+201F as UTF-8, one char a byte. */
    private static final Pattern DOUBLE = Pattern.compile("\u00E2\u0080[\u009C-\u009F]");

    private static final Pattern ROUND_VALUE = Pattern.compile(
            "^([^=]*=[ \t]*)\u00E2\u0080[\u0098-\u009F](.*)\u00E2\u0080[\u0098-\u009F]([ \t]*)$", Pattern.DOTALL);

    private Quotes() {}

    /** The line's bytes with plain quotes alone; as long as before only where it had no typographic ones. */
    static byte[] plain(ConfigLine line) {
        String text = new String(line.bytes(), StandardCharsets.ISO_8859_1);
        String bare = ROUND_VALUE.matcher(text).replaceFirst("$1$2$3");
        String plain = DOUBLE.matcher(SINGLE.matcher(bare).replaceAll("'")).replaceAll("\"");
        return plain.getBytes(StandardCharsets.ISO_8859_1);
    }
}
