package bootmend.earlier;

import bootmend.config.ConfigName;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Tells by their names the files that may be copies of the config file: what editors, package tools and people leave beside
 * it, and what a file system check saves.
 *
 * <p>Common practice, no source; {@code FSCK0000.REC} is what dosfstools 4.2 names a chain that it saves.
 */
final class CopyName {

    private static final Pattern RELATED =
            Pattern.compile(".*(config|cmdline-config|tryboot|usercfg|syscfg|distroconfig).*");
    private static final Pattern COPY = Pattern.compile(
            ".*(~|\\.(bak|old|orig|save|sav|copy|new|tmp|prev|dist|dpkg-[a-z]+|ucf-[a-z]+|rpm[a-z]+|[0-9]{1,3}))(\\.[0-9]{1,3}|\\.txt)?");
    private static final Pattern SAVED_BY_CHECK = Pattern.compile("(fsck|file)[0-9]{4}\\.(rec|chk)");
    private static final Pattern SWAP = Pattern.compile("\\.?.*\\.sw[a-p]");

    private CopyName() {}

    /** Whether a file of that name, whatever folder it is in, is looked into. */
    static boolean fits(String name) {
        String low = name.toLowerCase(Locale.ROOT);
        return !low.equals(ConfigName.NAME)
                        && low.endsWith(".txt")
                        && RELATED.matcher(low).matches()
                || RELATED.matcher(low).matches() && COPY.matcher(low).matches()
                || RELATED.matcher(low).matches() && !low.contains(".")
                || SAVED_BY_CHECK.matcher(low).matches()
                || low.startsWith("#config")
                || isSwap(name);
    }

    /** Whether it is named as an editor's swap file of the config file. */
    static boolean isSwap(String name) {
        String low = name.toLowerCase(Locale.ROOT);
        return SWAP.matcher(low).matches()
                && (RELATED.matcher(low).matches() || low.matches("_?config~[0-9]\\.sw[a-p]"));
    }
}
