package bootmend.tuning;

import java.util.List;
import java.util.OptionalLong;

/**
 * One key of the tuning vocabulary.
 *
 * @param key the key as the board reads it; case counts
 * @param group {@code clock}, {@code voltage}, {@code turbo}, {@code thermal}, {@code memory}, {@code supply},
 *     {@code one-time} or {@code boot}
 * @param unit {@code MHz}, {@code step}, {@code microvolt}, {@code degC}, {@code s}, {@code flag}, {@code switch} (on or
 *     off in words) and others
 * @param min lowest published value, where there is one
 * @param max highest published value, where there is one
 * @param stock the value as shipped
 * @param resets whether going back to stock takes an active line with this key out; else the line is only shown
 * @param appliesTo the published words on which boards read the key
 * @param boards the same as boards
 * @param unclear boards for which the published tables disagree on whether the key does anything
 * @param sets keys that this one sets together; empty for most
 * @param clamped whether a value above {@code max} counts as {@code max}
 * @param oneTime how a line with the key can write a bit of the chip that stays
 * @param published whether the key has a row of its own; else its name alone is like that of a tuning key
 * @param citation where all this is published, or that it is not
 * @param note more to know, possibly empty
 */
public record TuningKey(
        String key,
        String group,
        String unit,
        OptionalLong min,
        OptionalLong max,
        StockRule stock,
        boolean resets,
        String appliesTo,
        BoardSet boards,
        BoardSet unclear,
        List<String> sets,
        boolean clamped,
        OneTime oneTime,
        boolean published,
        String citation,
        String note) {

    private static final String SIDE = "boot";

    /** How a line with a key can write a bit of the chip that stays whatever the card holds later. */
    public enum OneTime {
        NEVER,
        /** A start of a board with the line on its card does it. */
        FROM_CARD,
        /** Only the update program does it, and only where it runs over USB. */
        OVER_USB
    }

    /** Whether the key belongs to clock, voltage, heat or supply; else it is only shown beside those that do. */
    public boolean tunes() {
        return !group.equals(SIDE);
    }

    /** Whether a kept setting of a board holds the key; what burns a bit of a chip is never kept to be put elsewhere. */
    public boolean isKept() {
        return oneTime == OneTime.NEVER && tunes() && (resets || group.equals("clock"));
    }

    /** Whether a value above 0 raises a voltage. */
    public boolean setsVoltage() {
        return group.equals("voltage") && (unit.equals("step") || unit.equals("microvolt"));
    }

    /** The same key under a name that a pattern stood for. */
    TuningKey named(String name) {
        return new TuningKey(
                name, group, unit, min, max, stock, resets, appliesTo, boards, unclear, sets, clamped, oneTime,
                published, citation, note);
    }
}
