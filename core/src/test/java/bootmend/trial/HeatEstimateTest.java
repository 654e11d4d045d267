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
        // 2000 MHz, 1.30 V: V^2 f = 3.38; at 12 degC a unit the rise is 40.56. 2100 MHz, 1.30 V: 3.549, 42.588.
        HeatEstimate estimate =
                estimate(onPi1(2000, 4).peak(22 + 40.56), onPi1(2100, 4).peak(22 + 42.588));

        // 2050 MHz, 1.30 V: 3.4645, so 41.574 over 25.
        HeatEstimate.Peak peak = ((HeatEstimate.Fitted) estimate).peak(Setting.fixed(2050, 4), 25);
        assertThat(peak.celsius()).isCloseTo(66.574, within(0.001));
        assertThat(peak.uncertainty()).isEqualTo(HeatEstimate.LEAST_UNCERTAINTY);
    }

    @Test
    void theUncertaintyIsThatOfTheFit() {
        // k = sum xy / sum xx; s from the residuals and three earlier readings; both worked out here step by step.
        HeatEstimate estimate = estimate(
                onPi1(1900, 4).peak(70), onPi1(2000, 4).peak(74), onPi1(2100, 4).peak(72));
        double[] x = {1.9 * 1.30 * 1.30, 2.0 * 1.30 * 1.30, 2.1 * 1.30 * 1.30};
        double[] y = {48, 52, 50};
        double xx = x[0] * x[0] + x[1] * x[1] + x[2] * x[2];
        double k = (x[0] * y[0] + x[1] * y[1] + x[2] * y[2]) / xx;
        double rest = Math.pow(y[0] - k * x[0], 2) + Math.pow(y[1] - k * x[1], 2) + Math.pow(y[2] - k * x[2], 2);
        double at = 2.05 * 1.30 * 1.30;

        HeatEstimate.Peak peak = ((HeatEstimate.Fitted) estimate).peak(Setting.fixed(2050, 4), 22);

        assertThat(peak.celsius()).isCloseTo(22 + k * at, within(1e-6));
        // t for five degrees of freedom: 2.571 ("e-Handbook of Statistical Methods", 1.3.6.7.2).
        double s = Math.sqrt((rest + 3 * 0.3 * 0.3) / 5);
        assertThat(peak.uncertainty()).isCloseTo(2.571 * s * Math.sqrt(1 + at * at / xx), within(1e-6));
        assertThat(peak.uncertainty()).isGreaterThan(HeatEstimate.LEAST_UNCERTAINTY);
    }

    @Test
    void whatLiesFarBeyondTheHottestTrialIsLessSure() {
        HeatEstimate.Fitted estimate =
                (HeatEstimate.Fitted) estimate(onPi1(1500, 0).peak(52));

        assertThat(estimate.peak(Setting.fixed(2000, 4), 22).uncertainty())
                .isGreaterThan(2 * estimate.peak(Setting.fixed(1500, 0), 22).uncertainty());
    }

    @Test
    void leavesOutWhatIsNotASteadyPeakOfThisCooling() {
        Surroundings bare = new Surroundings("none", "", OptionalDouble.of(22));
        Surroundings noAmbient = new Surroundings(LabTrials.LAB.cooling(), "", OptionalDouble.empty());

        assertThat(estimate(
                        onPi1(1500, 0).peak(70).in(bare),
                        onPi1(1500, 0).peak(70).in(noAmbient),
                        onPi1(1500, 0).peak(70).minutes(9),
                        onPi1(1500, 0).peak(70).idle(),
                        onPi1(1500, 0).peak(80).mask(0x80008),
                        onPi1(1500, 0).peak(21),
                        onPi1(1500, 0)))
                .isInstanceOfSatisfying(
                        HeatEstimate.Refused.class,
                        refused -> assertThat(refused.why()).contains("no trial is usable", "heat sink with fan"));
    }

    /** Documentation repository, issue 1772: a pi4's own voltage lies between 0.83 V and 1.1 V, chip by chip. */
    @Test
    void whereTheVoltsAreKnownWithinBoundsTheEstimateSpansThem() {
        HeatEstimate.Peak unknown = ((HeatEstimate.Fitted)
                        estimateOn("pi4", LabTrials.at(1500, 0).peak(52)))
                .peak(Setting.fixed(2000, 6), 22);
        HeatEstimate.Peak measured = ((HeatEstimate.Fitted)
                        estimateOn("pi4", LabTrials.at(1500, 0).peak(52).volts(0.88)))
                .peak(Setting.fixed(2000, 6), 22);

        // 30 degC at 0.88 V and 1500 MHz; at 1.03 V and 2000 MHz that is times 1.3700 times 1.3333.
        assertThat(measured.celsius()).isCloseTo(22 + 30 * (1.03 * 1.03 * 2.0) / (0.88 * 0.88 * 1.5), within(0.001));
        assertThat(unknown.uncertainty()).isGreaterThan(measured.uncertainty() + 2);
    }

    /** Firmware repository, issue 1876: on pi5 the voltage rises with the clock by itself. */
    @Test
    void whereTheBoardScalesTheEstimateSpansARisingVoltage() {
        LabTrials stock = LabTrials.at(2400, 0)
                .board("pi5")
                .unset("over_voltage")
                .peak(52)
                .volts(0.9);
        LabTrials faster = LabTrials.at(2800, 0)
                .board("pi5")
                .unset("over_voltage")
                .peak(62)
                .volts(0.95);
        HeatEstimate.Peak one = ((HeatEstimate.Fitted) estimateOn("pi5", stock)).peak(Setting.shifted(3000, 0), 22);
        HeatEstimate.Peak two =
                ((HeatEstimate.Fitted) estimateOn("pi5", stock, faster)).peak(Setting.shifted(3000, 0), 22);

        assertThat(one.uncertainty()).isGreaterThan(two.uncertainty());
        assertThat(one.most()).isGreaterThan(two.celsius());
    }

    private static LabTrials onPi1(long clock, long step) {
        return LabTrials.at(clock, step).board("pi1");
    }

    private static HeatEstimate estimate(LabTrials... trials) {
        return estimateOn("pi1", trials);
    }

    private static HeatEstimate estimateOn(String board, LabTrials... trials) {
        return HeatEstimate.of(board, LabTrials.placed(trials), LabTrials.LAB, LabTrials.TABLES);
    }
}
