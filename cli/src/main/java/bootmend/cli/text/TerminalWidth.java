package bootmend.cli.text;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How many columns the terminal has: what the variable {@code COLUMNS} says, else what {@code stty size} says of a
 * terminal, else 80; never fewer than 40.
 *
 * <p>Sources: POSIX.1-2017, "Environment Variables", 8.3; the operand {@code size}: POSIX.1-2024, "stty".
 *
 * @param isTerminal whether someone sits at it; nothing else is asked how wide it is
 */
record TerminalWidth(Map<String, String> environment, boolean isTerminal) {

    /** Where nobody says how wide the terminal is. */
    private static final int USUAL = 80;

    private static final int LEAST = 40;
    private static final long PATIENCE_MILLIS = 500;
    private static final Pattern SIZE = Pattern.compile("\\d{1,4} ([1-9]\\d{1,3})\\s*");
    private static final Pattern COLUMNS = Pattern.compile("[1-9]\\d{1,3}");

    int columns() {
        String columns = environment.getOrDefault("COLUMNS", "");
        if (COLUMNS.matcher(columns).matches()) {
            return Math.max(LEAST, Integer.parseInt(columns));
        }
        return isTerminal ? Math.max(LEAST, told().orElse(USUAL)) : USUAL;
    }

    private static OptionalInt told() {
        try {
            Process stty = new ProcessBuilder("stty", "size")
                    .redirectInput(ProcessBuilder.Redirect.INHERIT)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            if (!stty.waitFor(PATIENCE_MILLIS, TimeUnit.MILLISECONDS)) {
                stty.destroyForcibly();
                return OptionalInt.empty();
            }
            return parse(new String(stty.getInputStream().readNBytes(32), StandardCharsets.US_ASCII));
        } catch (IOException e) {
            // A system without that program; its terminals are taken to be as wide as usual.
            return OptionalInt.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return OptionalInt.empty();
        }
    }

    /** The columns of an answer such as {@code 24 80}. */
    static OptionalInt parse(String size) {
        Matcher found = SIZE.matcher(size);
        return found.matches() ? OptionalInt.of(Integer.parseInt(found.group(1))) : OptionalInt.empty();
    }
}
