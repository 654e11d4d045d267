package bootmend.config;

/**
 * Makes text from a card safe to show on one line of a terminal or a page.
 *
 * <p>Control characters (C0, C1, DEL), format characters (direction overrides and isolates, zero-width characters,
 * the byte-order mark), line and paragraph separators and unpaired surrogates become {@code \xHH} or
 * {@code \}{@code u{H...}}; everything else stays. Tab and line feed count as control characters.
 */
public final class VisibleText {

    private VisibleText() {}

    /** The same text with every character that could steer a terminal or hide text written out. */
    public static String of(String text) {
        if (text.codePoints().noneMatch(VisibleText::isHidden)) {
            return text;
        }
        StringBuilder shown = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(character -> append(shown, character));
        return shown.toString();
    }

    /** Decodes and makes visible. */
    public static String of(byte[] bytes) {
        return of(CardText.decode(bytes));
    }

    private static void append(StringBuilder shown, int character) {
        if (!isHidden(character)) {
            shown.appendCodePoint(character);
        } else if (character < 0x100) {
            shown.append(String.format("\\x%02X", character));
        } else {
            shown.append(String.format("\\u{%X}", character));
        }
    }

    private static boolean isHidden(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> true;
            default -> false;
        };
    }
}
