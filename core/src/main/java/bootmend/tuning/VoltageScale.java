package bootmend.tuning;

import java.util.OptionalLong;

/**
 * How a board turns the steps of a voltage key into volts.
 *
 * @param key the voltage key
 * @param boards the boards it is so on
 * @param zeroMicrovolts voltage at step 0, in microvolts
 * @param stepMicrovolts voltage between two steps, in microvolts, above 0
 * @param min lowest step
 * @param max highest step
 * @param citation where it is published
 */
public record VoltageScale(
        String key, BoardSet boards, long zeroMicrovolts, long stepMicrovolts, long min, long max, String citation) {

    /** The voltage at a step, in microvolts; empty for a step out of range. */
    public OptionalLong microvolts(long step) {
        return step < min || step > max
                ? OptionalLong.empty()
                : OptionalLong.of(zeroMicrovolts + step * stepMicrovolts);
    }

    /** The step that gives exactly this voltage; empty where no step in range does. */
    public OptionalLong step(long microvolts) {
        long distance = microvolts - zeroMicrovolts;
        long step = distance / stepMicrovolts;
        return distance % stepMicrovolts != 0 || step < min || step > max
                ? OptionalLong.empty()
                : OptionalLong.of(step);
    }
}
