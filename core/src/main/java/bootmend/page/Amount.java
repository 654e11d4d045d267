package bootmend.page;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Writes values with their units. */
public final class Amount {

    private static final long KIB = 1024;
    private static final List<String> UNITS = List.of("KiB", "MiB", "GiB", "TiB");

    private Amount() {}

    /** A setting's value, such as {@code 2000 MHz} or {@code 6 steps}; as it stands where it is no number. */
    public static String of(String value, String unit) {
        if (unit.equals("flag") || !value.matches("-?\\d+")) {
            return value;
        }
        boolean counted = unit.equals("step") || unit.equals("microvolt");
        return value + " " + unit + (counted && !value.equals("1") ? "s" : "");
    }

    /** Percent above stock, such as {@code +33 %}, or the two that it may be. */
    public static String percent(List<Double> percent) {
        return percent.stream()
                .map(each -> String.format(Locale.ROOT, "%+.0f %%", each).replaceFirst("^-0 ", "+0 "))
                .distinct()
                .collect(Collectors.joining(" or "));
    }

    /** Volts to the millivolt, such as {@code 1.35 V}; {@code change} puts a sign in front. */
    public static String volts(double volts, boolean change) {
        String number = String.format(Locale.ROOT, change ? "%+.3f" : "%.3f", volts);
        return number.replaceFirst("0$", "") + " V";
    }

    /** Bytes as people read them, such as {@code 256 MiB} or {@code 29.7 GiB}. */
    public static String size(long bytes) {
        if (bytes < KIB) {
            return bytes + " bytes";
        }
        double value = bytes;
        int unit = -1;
        while (value >= KIB && unit < UNITS.size() - 1) {
            value /= KIB;
            unit++;
        }
        return (value == Math.rint(value) ? Long.toString((long) value) : String.format(Locale.ROOT, "%.1f", value))
                + " " + UNITS.get(unit);
    }

    /** {@code 1 line}, {@code 3 lines}. */
    public static String count(long n, String thing) {
        return n + " " + thing + (n == 1 ? "" : "s");
    }
}
