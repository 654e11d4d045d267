package bootmend.tuning.resolve;

import bootmend.config.Condition;
import bootmend.config.VisibleText;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import java.util.OptionalLong;

/**
 * What a board takes a written value for.
 *
 * @param value the value as the board takes it
 * @param condition whether it takes it at all; unknown where no source tells
 */
record ValueCheck(String value, Condition condition) {

    static ValueCheck of(TuningKey key, String written) {
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
