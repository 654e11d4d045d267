package bootmend.trial;

import java.util.OptionalDouble;

/** What is measured in a trial, with the range that a sensible measurement lies in. */
public enum Quantity {
    MINUTES("minutes", 0, 1_000_000, "min"),
    PEAK("peak temperature", -60, 200, "degC"),
    AMBIENT("ambient temperature", -60, 100, "degC"),
    CLOCK("clock", 1, 10_000, "MHz"),
    VOLTS("voltage", 0, 5, "V"),
    BUSY("busy share", 0, 100, "%"),
    /** Higher is better. */
    SCORE("score", 0, 1e15, "points"),
    /** Since whatever moment; a log begins where it likes. */
    SECONDS("time", 0, 1e11, "s");

    private final String what;
    private final double min;
    private final double max;
    private final String unit;

    Quantity(String what, double min, double max, String unit) {
        this.what = what;
        this.min = min;
        this.max = max;
        this.unit = unit;
    }

    /**
     * The same value.
     *
     * @throws IllegalArgumentException with a sentence, if it is no number or out of range
     */
    public double check(double value) {
        if (!(value >= min && value <= max)) {
            throw new IllegalArgumentException(
                    "the " + what + " should be " + text(min) + " to " + text(max) + " " + unit + ", found " + value);
        }
        return value;
    }

    OptionalDouble check(OptionalDouble value) {
        value.ifPresent(this::check);
        return value;
    }

    private static String text(double limit) {
        return limit < 1e12 ? Long.toString((long) limit) : Double.toString(limit);
    }
}
