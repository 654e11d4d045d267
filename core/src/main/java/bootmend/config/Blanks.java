package bootmend.config;

/** Which characters are blanks in a config file: space and tab. */
final class Blanks {

    private Blanks() {}

    static boolean is(int character) {
        return character == ' ' || character == '\t';
    }

    /** The text without blanks at either end. */
    static String trim(String text) {
        int from = 0;
        int to = text.length();
        while (from < to && is(text.charAt(from))) {
            from++;
        }
        while (to > from && is(text.charAt(to - 1))) {
            to--;
        }
        return text.substring(from, to);
    }
}
