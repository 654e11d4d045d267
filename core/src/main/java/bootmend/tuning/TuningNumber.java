package bootmend.tuning;

import java.util.OptionalLong;
import java.util.regex.Pattern;

/**
 * Reads the number that a setting's value is: decimal, or hexadecimal with {@code 0x}.
 *
 * <p>Source: "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821. A minus sign comes from the range of
 * {@code over_voltage} ("Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446).
 */
public final class TuningNumber {

    private static final Pattern DECIMAL = Pattern.compile("-?[0-9]{1,10}");
    private static final Pattern HEXADECIMAL = Pattern.compile("0[xX][0-9a-fA-F]{1,8}");
    private static final int HEX = 16;

    private TuningNumber() {}

    /** The number; empty where the value is anything else, blanks and trailing text included. */
    public static OptionalLong parse(String value) {
        if (DECIMAL.matcher(value).matches()) {
            return OptionalLong.of(Long.parseLong(value));
        }
        return HEXADECIMAL.matcher(value).matches()
                ? OptionalLong.of(Long.parseLong(value.substring(2), HEX))
                : OptionalLong.empty();
    }
}
