package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** The next trial and why. Step 6 is the highest without force_turbo, 8 the end of the range: source S1, tuning/sources.csv. */
class AdviserTest {

    private static final List<Outcome> OUTCOMES = List.copyOf(EnumSet.allOf(Outcome.class));

    @Test
    void beginsAtStock() {
        Advice advice = advise();

        assertThat(advice.action()).isEqualTo(Advice.Action.TRY);
        assertThat(advice.setting()).contains(new Setting(1500, 0));
        assertThat(advice.noPeak()).contains("no trial is usable");
    }

    @Test
    void aSmallClockStepAfterAHold() {
        Advice advice = advise(LabTrials.at(1500, 0), LabTrials.at(1800, 2));

        assertThat(advice.setting()).contains(new Setting(1850, 2));
        assertThat(advice.why()).contains("1800 MHz at voltage step 2 held", "50 MHz more clock");
        assertThat(advice.best()).contains(new Setting(1800, 2));
        assertThat(advice.bestIsKnownGood()).isTrue();
    }

    @Test
    void oneStepMoreVoltageAfterAFailure() {
        Advice advice = advise(LabTrials.at(1800, 2), LabTrials.at(1850, 2).ended(Outcome.LOCKS_UP));

        assertThat(advice.setting()).contains(new Setting(1850, 3));
        assertThat(advice.why()).isEqualTo("Step 2 failed: one step more voltage.");
    }

    @Test
    void neverLessVoltageThanALowerClockFailedAt() {
        Advice advice = advise(
                LabTrials.at(1800, 5),
                LabTrials.at(1700, 2).ended(Outcome.NO_BOOT),
                LabTrials.at(2000, 1).ended(Outcome.NO_BOOT));

        assertThat(advice.setting()).contains(new Setting(2000, 3));
        assertThat(advice.why()).contains("Step 2 failed at 1700 MHz, and a higher clock never needs less");
    }

    @Test
    void takesASmallClockStepWhereTheFailingClockIsOutOfReach() {
        Advice advice = advise(LabTrials.at(2000, 4), LabTrials.at(2300, 6).ended(Outcome.NO_BOOT));

        assertThat(advice.setting()).contains(new Setting(2050, 4));
        assertThat(advice.stops())
                .singleElement()
                .asString()
                .contains("2300 MHz at voltage step 7 needs force_turbo=1", "warranty");
    }

    @Test
    void stopsBeforeForceTurboWithAKnownGoodSetting() {
        Advice advice = advise(LabTrials.at(2000, 6), LabTrials.at(2050, 6).ended(Outcome.LOCKS_UP));

        assertThat(advice.action()).isEqualTo(Advice.Action.STOP);
        assertThat(advice.setting()).isEmpty();
        assertThat(advice.why()).contains("known-good: keep it");
    }

    @Test
    void stopsAtTheEndOfThePublishedRange() {
        Advice advice = advise(
                LabTrials.at(2000, 6),
                LabTrials.at(2050, 8).set("force_turbo", 1).ended(Outcome.NO_BOOT));

        assertThat(advice.action()).isEqualTo(Advice.Action.STOP);
        assertThat(advice.stops())
                .singleElement()
                .asString()
                .contains("2050 MHz at voltage step 9 passes the published range, which ends at step 8");
    }

    @Test
    void asksForALongRunBeforeItSaysKeepIt() {
        Advice advice =
                advise(LabTrials.at(2000, 6).minutes(20), LabTrials.at(2050, 6).ended(Outcome.LOCKS_UP));

        assertThat(advice.action()).isEqualTo(Advice.Action.RUN_LONG);
        assertThat(advice.setting()).contains(new Setting(2000, 6));
        assertThat(advice.why()).contains("45 minutes under full load");
    }

    @Test
    void stopsWhereTheEstimatedPeakPassesEighty() {
        // On pi1, whose volts alone are published. V^2 f: 2.16 and 3.38; at 16.42 degC a unit the rises are 35.467 and
        // 55.500. 2050 MHz at step 4: 3.4645, 78.9; 2100 MHz: 3.549, 80.27.
        LabTrials cool = LabTrials.at(1500, 0).board("pi1").peak(22 + 35.467);
        LabTrials warm = LabTrials.at(2000, 4).board("pi1").peak(22 + 55.500);

        Advice next = adviseOn("pi1", cool, warm);
        assertThat(next.setting()).contains(new Setting(2050, 4));
        assertThat(next.peak())
                .hasValueSatisfying(
                        peak -> assertThat(Math.round(peak.celsius())).isEqualTo(79));

        Advice after =
                adviseOn("pi1", cool, warm, LabTrials.at(2050, 4).board("pi1").peak(22 + 56.887));
        assertThat(after.action()).isEqualTo(Advice.Action.STOP);
        assertThat(after.stops())
                .singleElement()
                .asString()
                .contains("2100 MHz at voltage step 4", "about 80.3 degC, over 80 degC");
    }

    @Test
    void coolsFirstWhenTheLastTrialWasTooHot() {
        Advice advice = advise(LabTrials.at(2000, 4).peak(81));

        assertThat(advice.action()).isEqualTo(Advice.Action.MEND);
        assertThat(advice.why()).contains("reached 81 degC");
    }

    @Test
    void tellsHeatFromSupply() {
        assertThat(advise(LabTrials.at(2000, 4).mask(0x80008)).why())
                .contains("soft temperature limit since boot", "Cool the board better");
        assertThat(advise(LabTrials.at(2000, 4).mask(0x50005)).why())
                .contains("supply under-voltage since boot", "Check the supply and its cable");
    }

    @Test
    void runsAgainWhatDecidedNothing() {
        Advice advice = advise(LabTrials.at(1800, 2), LabTrials.at(1900, 2).ended(Outcome.BOOTS));

        assertThat(advice.setting()).contains(new Setting(1900, 2));
        assertThat(advice.why()).contains("it only booted", "full load", "throttle mask");
    }

    @Test
    void triesStockWhereNothingHeldYet() {
        Advice advice = advise(LabTrials.at(2000, 6).ended(Outcome.NO_BOOT));
        assertThat(advice.setting()).contains(new Setting(1500, 0));

        Advice ill = advise(
                LabTrials.at(1500, 0).ended(Outcome.LOCKS_UP),
                LabTrials.at(2000, 6).ended(Outcome.NO_BOOT));
        assertThat(ill.setting()).contains(new Setting(1500, 1));
    }

    /** Each number is a trial: clock, step, outcome and heat in its digits. */
    @Property(tries = 500)
    void neverSuggestsAboveTheRangeOrInNeedOfForceTurbo(
            @ForAll @Size(max = 30) List<@IntRange(max = 5999) Integer> numbers) {
        LabTrials[] trials = numbers.stream()
                .map(number -> LabTrials.at(1500 + number % 10 * 100, number / 10 % 10 - 1)
                        .ended(OUTCOMES.get(number / 1000))
                        .peak(40 + number / 100 % 10 * 5))
                .toArray(LabTrials[]::new);

        Advice advice = advise(trials);

        Optional<Setting> tried = advice.action() == Advice.Action.TRY ? advice.setting() : Optional.empty();
        assertThat(tried.map(Setting::step).orElse(0L)).isLessThanOrEqualTo(6);
        assertThat(tried.flatMap(setting -> advice.peak())
                        .map(HeatEstimate.Peak::celsius)
                        .orElse(0.0))
                .isLessThanOrEqualTo(80);
        assertThat(advice.why()).isNotBlank();
    }

    private static Advice advise(LabTrials... trials) {
        return adviseOn("pi4", trials);
    }

    private static Advice adviseOn(String board, LabTrials... trials) {
        List<Placed> placed = LabTrials.placed(Arrays.copyOf(trials, trials.length));
        return new Adviser(
                        board,
                        placed,
                        HeatEstimate.of(placed, LabTrials.LAB, LabTrials.TABLES),
                        LabTrials.LAB,
                        LabTrials.TABLES)
                .advise();
    }
}
