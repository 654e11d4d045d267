package bootmend.boot;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The kernel's command line as the file has it.
 *
 * <p>Source: "Kernel command line", configuration/kernel-command-line-config.adoc, commit 14c113a6: one line. What a
 * board makes of further lines, of zeros and of a byte-order mark is common practice, no source.
 *
 * @param words the first line's words
 * @param laterWords those of the lines behind it
 * @param emptyFirst whether the first line is blank and words follow on another
 * @param marked whether the first word begins with a byte-order mark
 * @param wide whether it is saved with two bytes a character
 * @param zeros whether zero bytes stand in it
 * @param length bytes of the first line
 */
record CommandLine(
        List<String> words,
        List<String> laterWords,
        boolean emptyFirst,
        boolean marked,
        boolean wide,
        boolean zeros,
        int length) {

    static CommandLine parse(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        boolean wide = text.startsWith("\u00FF\u00FE") || text.startsWith("\u00FE\u00FF");
        boolean marked = text.startsWith("\u00EF\u00BB\u00BF");
        boolean zeros = !wide && text.indexOf('\0') >= 0;
        String[] lines = text.split("\r\n|\r|\n", -1);
        List<String> words = words(lines[0]);
        List<String> later = new ArrayList<>();
        for (int i = 1; i < lines.length; i++) {
            later.addAll(words(lines[i]));
        }
        return new CommandLine(
                words, later, words.isEmpty() && !later.isEmpty(), marked, wide, zeros, lines[0].length());
    }

    private static List<String> words(String line) {
        List<String> words = new ArrayList<>();
        for (String word : line.replace('\0', ' ').strip().split("\\s+", -1)) {
            if (!word.isEmpty()) {
                words.add(word);
            }
        }
        return words;
    }

    boolean isEmpty() {
        return words.isEmpty() && laterWords.isEmpty();
    }

    /** The last value that a name is given on the first line; source: the kernel keeps one value, common practice. */
    Optional<String> value(String name) {
        return value(words, name);
    }

    Optional<String> laterValue(String name) {
        return value(laterWords, name);
    }

    private static Optional<String> value(List<String> words, String name) {
        return words.stream()
                .filter(word -> word.startsWith(name + "="))
                .map(word -> unquoted(word.substring(name.length() + 1)))
                .reduce((before, after) -> after);
    }

    private static String unquoted(String value) {
        return value.length() > 1 && value.startsWith("\"") && value.endsWith("\"")
                ? value.substring(1, value.length() - 1)
                : value;
    }
}
