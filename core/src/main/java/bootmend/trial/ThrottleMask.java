package bootmend.trial;

import java.util.Locale;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The throttle report as people write it: hexadecimal, with {@code 0x} or without, as the board's own query prints it. */
public final class ThrottleMask {

    private static final Pattern TEXT = Pattern.compile("(?:throttled=)?(?:0[xX])?([0-9a-fA-F]{1,8})");
    private static final int HEX = 16;
    /** Bits 0 and 16, supply under-voltage now and since boot; source: S4 of tuning/sources.csv, values from memory. */
    private static final long SUPPLY = 0x10001;

    private ThrottleMask() {}

    /** The mask, 0 to 0xFFFFFFFF; empty where the text is none. */
    public static OptionalLong parse(String text) {
        Matcher matcher = TEXT.matcher(text.strip());
        return matcher.matches() ? OptionalLong.of(Long.parseLong(matcher.group(1), HEX)) : OptionalLong.empty();
    }

    /** Whether the supply is what the report tells of. */
    public static boolean tellsOfSupply(long mask) {
        return (mask & SUPPLY) != 0;
    }

    /** Such as {@code 0x50005}. */
    public static String text(long mask) {
        return String.format(Locale.ROOT, "0x%X", mask);
    }
}
