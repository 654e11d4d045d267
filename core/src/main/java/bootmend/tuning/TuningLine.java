package bootmend.tuning;

import java.util.Optional;

/**
 * A line of the config file that has, or was meant to have, a tuning key.
 *
 * @param lineNumber counted from 1
 * @param section the latest section line above, brackets included; empty above the first section
 * @param key the key as it stands on the line
 * @param value the value as it stands on the line, cut at the line limit
 * @param tuningKey what the key means
 * @param state whether the line counts
 */
public record TuningLine(
        int lineNumber,
        Optional<String> section,
        String key,
        String value,
        TuningKey tuningKey,
        TuningLineState state) {

    /** Whether the line counts; only then is it a tuning line. */
    public boolean isActive() {
        return state == TuningLineState.ACTIVE;
    }

    /** Whether going back to stock takes this line out. */
    public boolean resets() {
        return isActive() && tuningKey.resets();
    }
}
