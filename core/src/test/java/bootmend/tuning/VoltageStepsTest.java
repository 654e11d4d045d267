package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Source: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446: steps of 0.025 V; -16, 0 and 8 are
 * 0.8 V, 1.2 V and 1.4 V on pi1, and 0.95 V, 1.35 V and 1.55 V on the others. 6 follows: six steps above 0.
 */
class VoltageStepsTest {

    private final VoltageSteps steps = TuningTables.load().voltageSteps();

    @ParameterizedTest
    @CsvSource({"-16, 0.8", "0, 1.2", "6, 1.35", "8, 1.4"})
    void coreVoltageOnPi1(long step, double volts) {
        assertThat(steps.volts("over_voltage", "pi1", step)).isEqualTo(new Figure.Value(volts));
    }

    @ParameterizedTest
    @CsvSource({"-16, 0.95", "0, 1.35", "6, 1.5", "8, 1.55"})
    void coreVoltageOnTheOthers(long step, double volts) {
        for (String board : new String[] {"pi0", "pi0w", "pi02", "pi2", "pi3", "pi3+", "pi4", "cm4", "pi400", "pi5"}) {
            assertThat(steps.volts("over_voltage", board, step)).as(board).isEqualTo(new Figure.Value(volts));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "over_voltage_min",
                "over_voltage_sdram",
                "over_voltage_sdram_c",
                "over_voltage_sdram_i",
                "over_voltage_sdram_p"
            })
    void theOtherVoltagesAre12VoltAtStepZeroBeforePi4(String key) {
        assertThat(steps.volts(key, "pi1", 0)).isEqualTo(new Figure.Value(1.2));
        assertThat(steps.volts(key, "pi3+", 4)).isEqualTo(new Figure.Value(1.3));
        assertThat(steps.volts(key, "pi4", 0)).isInstanceOf(Figure.NotPublished.class);
    }

    @Test
    void aStepOutOfRangeHasNoVolts() {
        assertThat(steps.volts("over_voltage", "pi3", 9)).isInstanceOf(Figure.NotPublished.class);
        assertThat(steps.volts("over_voltage", "pi3", -17)).isInstanceOf(Figure.NotPublished.class);
    }

    @Test
    void whatIsNotPublishedStaysSo() {
        assertThat(steps.volts("over_voltage", "cm1", 0))
                .isEqualTo(new Figure.NotPublished("volts of over_voltage on cm1"));
        assertThat(steps.scale("over_voltage_delta", "pi5")).isEmpty();
    }

    @Test
    void voltsTurnBackIntoSteps() {
        VoltageScale scale = steps.scale("over_voltage", "pi3").orElseThrow();

        assertThat(scale.step(1_500_000)).hasValue(6);
        assertThat(scale.step(950_000)).hasValue(-16);
        assertThat(scale.step(1_510_000)).isEmpty();
        assertThat(scale.step(1_340_000)).isEmpty();
        assertThat(scale.step(1_575_000)).isEmpty();
        assertThat(scale.step(925_000)).isEmpty();
        for (long step = scale.min(); step <= scale.max(); step++) {
            assertThat(scale.step(scale.microvolts(step).orElseThrow())).hasValue(step);
        }
    }

    @Test
    void microvolts() {
        assertThat(VoltageSteps.volts(50_000)).isEqualTo(new Figure.Value(0.05));
        assertThat(VoltageSteps.volts(-25_000)).isEqualTo(new Figure.Value(-0.025));
    }
}
