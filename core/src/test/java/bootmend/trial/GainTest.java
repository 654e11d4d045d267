package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/**
 * Gain per clock. The values are common practice, no source: measured on one pi4-family board, 1500 MHz stock, at 1700,
 * 2000, 2100 and 2300 MHz.
 */
class GainTest {

    private static final long[] CLOCKS = {1700, 2000, 2100, 2300};
    private final List<Gain> gains = Gain.of(measured(), OptionalLong.of(1500));

    @Test
    void singleCoreScoresRiseByTheseSharesOfTheClock() {
        assertThat(gain("single-core").points())
                .extracting(point -> Math.round(point.perClock() * 100))
                .containsExactly(90L, 84L, 85L, 92L);
        assertThat(gain("single-core").points())
                .extracting(Gain.Point::clock)
                .containsExactly(1700L, 2000L, 2100L, 2300L);
        assertThat(gain("single-core").baseClock()).isEqualTo(1500);
    }

    @Test
    void theTranscodingJobGainsLeastAtEveryClock() {
        for (int i = 0; i < CLOCKS.length; i++) {
            int at = i;
            assertThat(gains).hasSize(4);
            assertThat(gains.stream()
                            .min(Comparator.comparingDouble(
                                    gain -> gain.points().get(at).perClock())))
                    .map(Gain::score)
                    .contains("transcoding job");
        }
    }

    @Test
    void moreClockStopsPayingWhereItsLastStepsBringLessThanHalf() {
        // Transcoding, 2100 to 2300 MHz: 6 % more for 13.3 % more clock, 0.45. All-core over the same step: 8 %, 0.60.
        assertThat(gain("transcoding job").points().get(3).perClockOfLastStep()).isCloseTo(0.45, within(0.001));
        assertThat(gain("transcoding job").stoppedPayingAt()).hasValue(2100);
        assertThat(gain("all-core").points().get(3).perClockOfLastStep()).isCloseTo(0.60, within(0.001));
        assertThat(gain("all-core").stoppedPayingAt()).isEmpty();
    }

    @Test
    void oneBadStepInTheMiddleIsNotTheEnd() {
        List<Gain> bumpy = Gain.of(
                LabTrials.placed(
                        LabTrials.at(1500, 0).score("s", 100),
                        LabTrials.at(1600, 0).score("s", 101),
                        LabTrials.at(1700, 0).score("s", 112)),
                OptionalLong.empty());

        assertThat(bumpy.get(0).stoppedPayingAt()).isEmpty();
    }

    @Test
    void whereNoStepPaidItStoppedAtTheBaseClock() {
        List<Gain> flat = Gain.of(
                LabTrials.placed(
                        LabTrials.at(1500, 0).score("s", 100),
                        LabTrials.at(2000, 4).score("s", 103)),
                OptionalLong.of(1500));

        assertThat(flat.get(0).stoppedPayingAt()).hasValue(1500);
    }

    @Test
    void takesTheMeanOfSeveralTrialsAndTheLowestClockWithoutStock() {
        List<Gain> gains = Gain.of(
                LabTrials.placed(
                        LabTrials.at(2000, 4).score("s", 90),
                        LabTrials.at(2000, 4).score("s", 110),
                        LabTrials.at(2200, 5).score("s", 110),
                        LabTrials.at(2200, 5).score("other", 1)),
                OptionalLong.of(1500));

        assertThat(gains).singleElement().satisfies(gain -> {
            assertThat(gain.baseClock()).isEqualTo(2000);
            assertThat(gain.points())
                    .singleElement()
                    .satisfies(point -> assertThat(point.perClock()).isCloseTo(1, within(1e-9)));
        });
    }

    private Gain gain(String score) {
        return gains.stream()
                .filter(gain -> gain.score().equals(score))
                .findFirst()
                .orElseThrow();
    }

    private static List<Placed> measured() {
        int[][] percent = {{12, 28, 34, 49}, {13, 29, 34, 42}, {11, 28, 33, 41}, {9, 21, 25, 31}};
        List<String> names = List.of("single-core", "all-core", "memory", "transcoding job");
        List<LabTrials> trials = new ArrayList<>(List.of(LabTrials.at(1500, 0)));
        for (long clock : CLOCKS) {
            trials.add(LabTrials.at(clock, 4));
        }
        for (int score = 0; score < names.size(); score++) {
            trials.get(0).score(names.get(score), 250);
            for (int i = 0; i < CLOCKS.length; i++) {
                trials.get(i + 1).score(names.get(score), 250 * (1 + percent[score][i] / 100.0));
            }
        }
        return LabTrials.placed(trials.toArray(LabTrials[]::new));
    }
}
