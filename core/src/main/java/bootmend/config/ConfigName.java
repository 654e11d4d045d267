package bootmend.config;

import java.util.Locale;
import java.util.Set;

/**
 * Tells names that a desktop editor may have given the config file by mistake.
 *
 * <p>No source: these are the forms that hidden extensions, blanks and retyped names lead to, and what is left where a
 * long name's slots were lost.
 */
public final class ConfigName {

    /** The name that a board looks for, in any case. */
    public static final String NAME = "config.txt";

    /** The file that a board started with its try-once flag reads in its place. */
    public static final String TRY_ONCE = "tryboot.txt";

    private static final Set<String> MEANT = Set.of(NAME, "config.txt.txt", "config", "config~1.txt");

    private ConfigName() {}

    /** Whether {@code name} is not the config file's but may well be meant to be. */
    public static boolean isMisnamed(String name) {
        return !name.equalsIgnoreCase(NAME)
                && MEANT.contains(withoutBlanks(name).toLowerCase(Locale.ROOT));
    }

    private static String withoutBlanks(String name) {
        StringBuilder kept = new StringBuilder();
        name.codePoints()
                .filter(c -> !Character.isWhitespace(c)
                        && !Character.isSpaceChar(c)
                        && Character.getType(c) != Character.FORMAT)
                .forEach(kept::appendCodePoint);
        return kept.toString();
    }
}
