package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What a trial counts for; the 45 minutes are common practice, no source. */
class StandingTest {

    @Test
    void aHoldCountsOnlyUnderFullLoadWithoutAThrottleBit() {
        assertThat(kind(LabTrials.at(2000, 4))).isEqualTo(Standing.Kind.HELD);
        assertThat(kind(LabTrials.at(2000, 4).idle())).isEqualTo(Standing.Kind.UNDECIDED);
        assertThat(kind(LabTrials.at(2000, 4).withoutMask())).isEqualTo(Standing.Kind.UNDECIDED);
        assertThat(kind(LabTrials.at(2000, 4).mask(0x40000))).isEqualTo(Standing.Kind.THROTTLED);
        assertThat(kind(LabTrials.at(2000, 4).ended(Outcome.BOOTS))).isEqualTo(Standing.Kind.UNDECIDED);
        assertThat(kind(LabTrials.at(2000, 4).ended(Outcome.THROTTLES))).isEqualTo(Standing.Kind.THROTTLED);
    }

    @ParameterizedTest
    @EnumSource(
            value = Outcome.class,
            names = {"NO_BOOT", "LOCKS_UP", "MISBEHAVES"})
    void aFailureFailsWhateverElseWasSeen(Outcome outcome) {
        assertThat(kind(LabTrials.at(2000, 4).ended(outcome))).isEqualTo(Standing.Kind.FAILED);
        assertThat(kind(LabTrials.at(2000, 4).ended(outcome).idle().mask(1))).isEqualTo(Standing.Kind.FAILED);
    }

    @ParameterizedTest
    @CsvSource({"45, true", "44.9, false", "0, false", "600, true"})
    void knownGoodTakesFortyFiveMinutes(double minutes, boolean knownGood) {
        assertThat(LabTrials.at(2000, 4).minutes(minutes).trial(1).isKnownGood())
                .isEqualTo(knownGood);
    }

    @Test
    void whatItsLogContradictsDecidesNothing() {
        assertThat(kind(LabTrials.at(2000, 4).contradicted())).isEqualTo(Standing.Kind.UNDECIDED);
        assertThat(kind(LabTrials.at(2000, 4).ended(Outcome.LOCKS_UP).contradicted()))
                .isEqualTo(Standing.Kind.UNDECIDED);
        assertThat(LabTrials.at(2000, 4).contradicted().trial(1).isKnownGood()).isFalse();
    }

    @Test
    void knownGoodIsNeverWithoutLoadOrMask() {
        assertThat(LabTrials.at(2000, 4).idle().trial(1).isKnownGood()).isFalse();
        assertThat(LabTrials.at(2000, 4).withoutMask().trial(1).isKnownGood()).isFalse();
        assertThat(LabTrials.at(2000, 4).mask(0x10000).trial(1).isKnownGood()).isFalse();
        assertThat(LabTrials.at(2000, 4).ended(Outcome.LOCKS_UP).trial(1).isKnownGood())
                .isFalse();
    }

    @Test
    void valuesOutOfRangeAreRefusedWithASentence() {
        assertThatThrownBy(() -> LabTrials.at(2000, 4).minutes(-1).trial(1))
                .hasMessageContaining("minutes should be 0 to");
        assertThatThrownBy(() -> LabTrials.at(2000, 4).peak(Double.NaN).trial(1))
                .hasMessageContaining("peak temperature");
        assertThatThrownBy(() -> LabTrials.at(2000, 4).score("one core", 0).trial(1))
                .hasMessageContaining("above 0");
        assertThatThrownBy(() -> new Unit("pi4", " ")).hasMessageContaining("label is empty");
        assertThatThrownBy(() -> new Unit("pi4", "a\u001b[2J")).hasMessageContaining("one line");
        assertThatThrownBy(() -> new Unit("pi4", "x".repeat(61))).hasMessageContaining("60");
        assertThatThrownBy(() -> new Run(
                        OptionalDouble.empty(),
                        false,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalLong.of(1L << 32)))
                .hasMessageContaining("0xFFFFFFFF");
    }

    private static Standing.Kind kind(LabTrials trial) {
        return trial.trial(1).standing().kind();
    }
}
