package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * Heat by P ~ C V^2 f ("CMOS VLSI Design", 4th edition, chapter 5) with the published volts of a step on pi1: 1.2 V at
 * step 0, 0.025 V a step ("Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446).
 */
class HeatEstimateTest {

    @Test
    void aBoardThatFollowsTheLawExactlyIsFoldedBackToIt() {
        // 1500 MHz, 1.20 V: V^2 f = 2.16; at 12 degC a unit the rise is 25.92. 2000 MHz, 1.30 V: 3.38, 40.56.
        HeatEstimate estimate =
                estimate(onPi1(1500, 0).peak(22 + 25.92), onPi1(2000, 4).peak(22 + 40.56));

        // 2200 MHz, 1.35 V: 4.0095, so 48.114 over 25.
        HeatEstimate.Peak peak = ((HeatEstimate.Fitted) estimate).peak(new Setting(2200, 6), 25);
        assertThat(peak.celsius()).isCloseTo(73.114, within(0.001));
        assertThat(peak.uncertainty()).isEqualTo(HeatEstimate.LEAST_UNCERTAINTY);
    }

    @Test
    void theUncertaintyIsThatOfTheFit() {
        // k = sum xy / sum xx; s from the residuals; both worked out here step by step.
        HeatEstimate estimate = estimate(
                onPi1(1500, 0).peak(52), onPi1(2000, 4).peak(74), onPi1(1700, 2).peak(63));
        double[] x = {1.5 * 1.20 * 1.20, 2.0 * 1.30 * 1.30, 1.7 * 1.25 * 1.25};
        double[] y = {30, 52, 41};
        double xx = x[0] * x[0] + x[1] * x[1] + x[2] * x[2];
        double k = (x[0] * y[0] + x[1] * y[1] + x[2] * y[2]) / xx;
        double rest = Math.pow(y[0] - k * x[0], 2) + Math.pow(y[1] - k * x[1], 2) + Math.pow(y[2] - k * x[2], 2);
        double at = 2.1 * 1.325 * 1.325;

        HeatEstimate.Peak peak = ((HeatEstimate.Fitted) estimate).peak(new Setting(2100, 5), 22);

        assertThat(peak.celsius()).isCloseTo(22 + k * at, within(1e-6));
        // t for two degrees of freedom: 4.303 ("e-Handbook of Statistical Methods", 1.3.6.7.2).
        assertThat(peak.uncertainty()).isCloseTo(4.303 * Math.sqrt(rest / 2 * (1 + at * at / xx)), within(1e-6));
        assertThat(peak.uncertainty()).isGreaterThan(HeatEstimate.LEAST_UNCERTAINTY);
    }

    @Test
    void refusesFewerThanTwoUsableTrials() {
        assertThat(estimate()).isInstanceOf(HeatEstimate.Refused.class);
        assertThat(estimate(onPi1(1500, 0).peak(50)))
                .isInstanceOfSatisfying(
                        HeatEstimate.Refused.class,
                        refused -> assertThat(refused.why())
                                .contains("one trial is usable", "it takes 2", "heat sink with fan"));
    }

    @Test
    void leavesOutWhatIsNotASteadyPeakOfThisCooling() {
        Surroundings bare = new Surroundings("none", "", OptionalDouble.of(22));
        Surroundings noAmbient = new Surroundings(LabTrials.LAB.cooling(), "", OptionalDouble.empty());

        assertThat(estimate(
                        onPi1(1500, 0).peak(50),
                        onPi1(1500, 0).peak(70).in(bare),
                        onPi1(1500, 0).peak(70).in(noAmbient),
                        onPi1(1500, 0).peak(70).minutes(9),
                        onPi1(1500, 0).peak(70).idle(),
                        onPi1(1500, 0).peak(80).mask(0x80008),
                        onPi1(1500, 0).peak(21),
                        onPi1(1500, 0)))
                .isInstanceOfSatisfying(
                        HeatEstimate.Refused.class,
                        refused -> assertThat(refused.why()).startsWith("one trial is usable"));
    }

    @Test
    void refusesWhereTheVoltsAreNotPublished() {
        assertThat(estimate(
                        LabTrials.at(700, 0).board("cm1").peak(50),
                        LabTrials.at(800, 2).board("cm1").peak(55)))
                .isInstanceOfSatisfying(
                        HeatEstimate.Refused.class,
                        refused ->
                                assertThat(refused.why()).isEqualTo("volts of over_voltage on cm1 are not published"));
    }

    /** Documentation repository, issue 1772: no volts follow from a step there. */
    @Test
    void refusesOnBoardsWhoseVoltsDifferFromChipToChip() {
        assertThat(estimate(
                        LabTrials.at(1500, 0).peak(50), LabTrials.at(2000, 4).peak(70)))
                .isInstanceOfSatisfying(
                        HeatEstimate.Refused.class,
                        refused -> assertThat(refused.why()).contains("differs from chip to chip", "not published"));
    }

    private static LabTrials onPi1(long clock, long step) {
        return LabTrials.at(clock, step).board("pi1");
    }

    private static HeatEstimate estimate(LabTrials... trials) {
        return HeatEstimate.of(LabTrials.placed(trials), LabTrials.LAB, LabTrials.TABLES);
    }
}
