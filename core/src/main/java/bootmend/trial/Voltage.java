package bootmend.trial;

import java.util.Objects;
import java.util.OptionalLong;

/**
 * How the core voltage is set in a trial.
 *
 * @param axis the scale it stands on; where no key is set, that on which the board's own choice is 0
 * @param set the key's number, in the key's unit; empty where the voltage is left to the board
 */
public record Voltage(VoltageAxis axis, OptionalLong set) {

    public Voltage {
        Objects.requireNonNull(axis);
        Objects.requireNonNull(set);
    }

    public static Voltage of(VoltageAxis axis, long amount) {
        return new Voltage(axis, OptionalLong.of(amount));
    }

    static Voltage leftOn(VoltageAxis axis) {
        return new Voltage(axis, OptionalLong.empty());
    }

    /** Where it stands on its axis, in the key's unit. */
    public long amount() {
        return set.orElse(0);
    }

    /** The same in grains of the axis, each 0.025 V. */
    public double level() {
        return (double) amount() / axis.grain();
    }

    public VoltageMode mode() {
        if (set.isEmpty()) {
            return VoltageMode.LEFT;
        }
        return axis == VoltageAxis.STEPS ? VoltageMode.FIXED : VoltageMode.SHIFTED;
    }

    /** As it is said in sentences, after a clock. */
    public String words() {
        return switch (mode()) {
            case LEFT -> "with voltage left to the board";
            case FIXED -> "at voltage step " + amount();
            case SHIFTED -> "with voltage shifted by " + amount() + " microvolts";
        };
    }
}
