package bootmend.trial;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/** Checks the words and lists of a trial, so that a file that was edited by hand stays one that can be shown. */
final class TextLimits {

    static final int MAX_LABEL = 60;
    static final int MAX_LINE = 200;
    static final int MAX_NOTES = 4000;
    static final int MAX_ENTRIES = 64;

    private TextLimits() {}

    /** The text without blanks at its ends; one line, at most {@code max} characters. */
    static String line(String what, String text, int max) {
        String plain = text.strip();
        if (plain.length() > max || plain.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException("the " + what + " should be one line of at most " + max + " characters");
        }
        return plain;
    }

    /** The same, and not empty. */
    static String name(String what, String text, int max) {
        String plain = line(what, text, max);
        if (plain.isEmpty()) {
            throw new IllegalArgumentException("the " + what + " is empty");
        }
        return plain;
    }

    static String notes(String text) {
        if (text.length() > MAX_NOTES) {
            throw new IllegalArgumentException("the notes should be at most " + MAX_NOTES + " characters");
        }
        return text.strip();
    }

    /** A sorted copy; at most {@value #MAX_ENTRIES} entries. */
    static <T> Map<String, T> map(String what, Map<String, T> map) {
        if (map.size() > MAX_ENTRIES) {
            throw new IllegalArgumentException("there are more than " + MAX_ENTRIES + " " + what);
        }
        return Collections.unmodifiableMap(new TreeMap<>(map));
    }
}
