package bootmend.tuning.resolve;

import bootmend.config.Condition;
import bootmend.config.VisibleText;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What a board takes a written value for.
 *
 * @param value the value as the board takes it
 * @param condition whether it takes it at all; unknown where no source tells
 */
record ValueCheck(String value, Condition condition) {

    private static final String SWITCH = "switch";

    /** Values from memory. */
    private static final Set<String> SWITCHES = Set.of("on", "off", "yes", "no", "true", "false", "y", "n");

    static ValueCheck of(TuningKey key, String written) {
        if (key.unit().equals(SWITCH) && SWITCHES.contains(written)) {
            return new ValueCheck(written, Condition.HOLDS);
        }
        OptionalLong number = TuningNumber.parse(written);
        if (number.isEmpty()) {
            return unclear(key, written, "which is no number");
        }
        long value = number.getAsLong();
        if (key.max().isPresent() && value > key.max().getAsLong()) {
            return key.clamped()
                    ? new ValueCheck(Long.toString(key.max().getAsLong()), Condition.HOLDS)
                    : unclear(key, written, "which is above the published range");
        }
        if (key.min().isPresent() && value < key.min().getAsLong()) {
            return unclear(key, written, "which is below the published range");
        }
        return new ValueCheck(written, Condition.HOLDS);
    }

    private static ValueCheck unclear(TuningKey key, String written, String why) {
        return new ValueCheck(
                written,
                Condition.dependsOn(
                        "what the board makes of " + key.key() + "=" + VisibleText.of(written) + ", " + why));
    }
}
