package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Source: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446: steps of 0.025 V; -16, 0 and 8 are
 * 0.8 V, 1.2 V and 1.4 V on pi1, and 0.95 V, 1.35 V and 1.55 V on the others, which others contradict. 6 follows: six
 * steps above 0.
 */
class VoltageStepsTest {

    private final VoltageSteps steps = TuningTables.load().voltageSteps();

    @ParameterizedTest
    @CsvSource({"-16, 0.8", "0, 1.2", "6, 1.35", "8, 1.4"})
    void coreVoltageOnPi1(long step, double volts) {
        assertThat(steps.volts("over_voltage", "pi1", step)).isEqualTo(new Figure.Value(volts));
    }

    /**
     * The maker's engineers contradict the table's one figure for all but pi1 (documentation repository, issue 495:
     * 1.2 V at step 0 on BCM2835 to BCM2837) or say that no absolute volts follow from a step (issue 1772 for the pi4
     * family; firmware repository, issue 1876, for the pi5 family).
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "pi0 pi0w pi02 cm0 pi2 pi3 pi3+ cm3 cm3+; engineers count from 1.2 V",
                "pi4 pi400 cm4 cm4s; differs from chip to chip, and stop at 1.1 V",
                "pi5 pi500 cm5; between 0.72 and 1.0 V"
            })
    void noVoltsAreToldWhereTheSourcesGiveNone(String boards, String why) {
        for (String board : boards.split(" ", -1)) {
            assertThat(steps.scale("over_voltage", board)).as(board).isEmpty();
            assertThat(steps.unclear("over_voltage", board))
                    .as(board)
                    .hasValueSatisfying(words -> assertThat(words).contains(why));
            for (long step : new long[] {-16, 0, 6, 8}) {
                assertThat(steps.volts("over_voltage", board, step))
                        .as(board)
                        .isInstanceOfSatisfying(
                                Figure.NotPublished.class,
                                missing -> assertThat(missing.what()).contains(why));
            }
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
        assertThat(steps.volts("over_voltage", "pi1", 9)).isInstanceOf(Figure.NotPublished.class);
        assertThat(steps.volts("over_voltage", "pi1", -17)).isInstanceOf(Figure.NotPublished.class);
    }

    @Test
    void whatIsNotPublishedStaysSo() {
        assertThat(steps.volts("over_voltage", "cm1", 0))
                .isEqualTo(new Figure.NotPublished("volts of over_voltage on cm1"));
        assertThat(steps.scale("over_voltage_delta", "pi5")).isEmpty();
    }

    @Test
    void voltsTurnBackIntoSteps() {
        VoltageScale scale = steps.scale("over_voltage", "pi1").orElseThrow();

        assertThat(scale.step(1_350_000)).hasValue(6);
        assertThat(scale.step(800_000)).hasValue(-16);
        assertThat(scale.step(1_360_000)).isEmpty();
        assertThat(scale.step(1_190_000)).isEmpty();
        assertThat(scale.step(1_425_000)).isEmpty();
        assertThat(scale.step(775_000)).isEmpty();
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
