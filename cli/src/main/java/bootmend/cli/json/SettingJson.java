package bootmend.cli.json;

import bootmend.trial.Setting;
import bootmend.trial.VoltageAxis;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Locale;
import java.util.Optional;

/**
 * A setting by the config file's own keys; {@code voltageMode} is "left", "fixed" or "shifted", and the keys of the ways
 * that are not taken are null.
 */
record SettingJson(
        @JsonProperty("arm_freq") long clock,
        @JsonProperty("over_voltage") Optional<Long> step,
        @JsonProperty("over_voltage_delta") Optional<Long> shift,
        String voltageMode) {

    static SettingJson of(Setting setting) {
        return new SettingJson(
                setting.clock(),
                on(setting, VoltageAxis.STEPS),
                on(setting, VoltageAxis.SHIFT),
                setting.voltage().mode().name().toLowerCase(Locale.ROOT));
    }

    private static Optional<Long> on(Setting setting, VoltageAxis axis) {
        return setting.axis() == axis && setting.voltage().set().isPresent()
                ? Optional.of(setting.voltage().amount())
                : Optional.empty();
    }
}
