package bootmend.tuning;

import java.util.List;
import java.util.OptionalLong;

/**
 * One key of the tuning vocabulary.
 *
 * @param key the key as the board reads it; case counts
 * @param group {@code clock}, {@code voltage}, {@code turbo} or {@code thermal}
 * @param unit {@code MHz}, {@code step}, {@code microvolt}, {@code degC}, {@code s} or {@code flag}
 * @param min lowest published value, where there is one
 * @param max highest published value, where there is one
 * @param stock the value as shipped
 * @param resets whether going back to stock takes an active line with this key out; else the line is only shown
 * @param appliesTo the published words on which boards read the key
 * @param boards the same as boards
 * @param unclear boards for which the published tables disagree on whether the key does anything
 * @param sets keys that this one sets together; empty for most
 * @param clamped whether a value above {@code max} counts as {@code max}
 * @param source where all this is published
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
        Source source,
        String note) {}
