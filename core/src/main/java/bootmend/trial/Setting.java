package bootmend.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A clock and a core voltage that a board is tried at.
 *
 * @param clock {@code arm_freq}, in MHz
 */
public record Setting(long clock, Voltage voltage) {

    public Setting {
        Objects.requireNonNull(voltage);
    }

    /** With the voltage fixed by a step of {@code over_voltage}. */
    public static Setting fixed(long clock, long step) {
        return new Setting(clock, Voltage.of(VoltageAxis.STEPS, step));
    }

    /** With the voltage shifted by microvolts of {@code over_voltage_delta}. */
    public static Setting shifted(long clock, long microvolts) {
        return new Setting(clock, Voltage.of(VoltageAxis.SHIFT, microvolts));
    }

    /** As it is said in sentences. */
    public String words() {
        return clock + " MHz " + voltage.words();
    }

    /** As lines of the config file. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("arm_freq=" + clock);
        voltage.set().ifPresent(amount -> lines.add(voltage.axis().key() + "=" + amount));
        return List.copyOf(lines);
    }

    public VoltageAxis axis() {
        return voltage.axis();
    }

    /** Whether a board that can do this can do {@code other}: no higher clock, no lower voltage, on the same axis. */
    public boolean demandsAtLeast(Setting other) {
        return axis() == other.axis() && clock >= other.clock && voltage.amount() <= other.voltage.amount();
    }
}
