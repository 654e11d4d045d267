package bootmend.trial.search;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.trial.HeatEstimate;
import bootmend.trial.LabTrials;
import bootmend.trial.Outcome;
import bootmend.trial.Placed;
import bootmend.trial.Setting;
import bootmend.trial.Surroundings;
import bootmend.trial.VoltageAxis;
import bootmend.trial.VoltageMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** The next trial and why. Step 6 is the highest without force_turbo, 8 the end of the range: source S1, tuning/sources.csv. */
class AdviserTest {

    private static final List<Outcome> OUTCOMES = List.copyOf(EnumSet.allOf(Outcome.class));
    private static final Surroundings BARE = new Surroundings("none", "", OptionalDouble.of(22));

    @Test
    void beginsAtStockWithTheVoltageLeftToTheBoard() {
        Advice advice = advise("pi4");

        assertThat(advice.action()).isEqualTo(Advice.Action.TRY);
        assertThat(advice.setting().map(Setting::lines)).contains(List.of("arm_freq=1500"));
        assertThat(advice.minutes()).hasValue(HeatEstimate.STEADY_MINUTES);
        assertThat(advice.noPeak()).contains("no trial is usable");
    }

    @Test
    void saysWhyTheVoltageIsSetInAnotherWay() {
        Advice advice = advise("pi4", stock("pi4", 1500).peak(48).volts(0.86));

        assertThat(advice.setting().map(Setting::axis)).contains(VoltageAxis.STEPS);
        assertThat(advice.change())
                .contains("fixed by over_voltage and no longer left to the board", "turns automatic scaling off");
    }

    /** Firmware repository, issue 1876: over_voltage leaves the chip's own base out on pi5, over_voltage_delta does not. */
    @Test
    void pi5IsShiftedAndNeverFixed() {
        Advice first = advise("pi5", stock("pi5", 2400).peak(50).volts(0.88));
        assertThat(first.setting().map(each -> each.voltage().mode())).contains(VoltageMode.SHIFTED);

        Advice change = advise(
                "pi5",
                stock("pi5", 2400).peak(50).volts(0.88),
                LabTrials.at(2700, 2).board("pi5").peak(60).volts(0.93));
        assertThat(change.setting().map(Setting::axis)).contains(VoltageAxis.SHIFT);
        assertThat(change.change()).contains("no longer fixed by over_voltage", "deprecated");
    }

    @Test
    void staysWithTheWayThatItsUserTakes() {
        Advice advice = advise(
                "pi4",
                stock("pi4", 1500).peak(48).volts(0.86),
                LabTrials.at(1700, 0).unset("over_voltage").set("over_voltage_delta", 25_000));

        assertThat(advice.setting().map(Setting::axis)).contains(VoltageAxis.SHIFT);
        assertThat(advice.change()).isEmpty();
    }

    @Test
    void everyTrialHasItsReasonChanceAndOutlook() {
        Advice advice = advise("pi4", stock("pi4", 1500).peak(48).volts(0.86));

        assertThat(advice.chance().orElseThrow()).isBetween(0.05, 0.95);
        assertThat(advice.why()).contains("tells most for its minutes", "chance of");
        assertThat(advice.outcomes())
                .extracting(Advice.Outlook::outcome)
                .containsExactly("it holds", "it fails while it runs", "it does not boot");
        assertThat(advice.behind()).isNotEmpty().doesNotContain(advice.setting().orElseThrow());
        assertThat(advice.minutes().orElseThrow()).isLessThan(45);
    }

    /** A board whose edge is known: it fails above 1900 MHz and 40 MHz more for each step, and nowhere else. */
    @Test
    void followedToItsEndItKeepsTheHighestClockAndItsLowestVoltage() {
        List<LabTrials> done =
                new ArrayList<>(List.of(stock("pi4", 1500).peak(48).volts(0.86)));
        double minutes = 10;
        boolean heldAtTop = false;
        boolean lowered = false;
        Advice advice = next("pi4", done);
        while (advice.setting().isPresent() && done.size() < 40) {
            Setting setting = advice.setting().get();
            long step = setting.voltage().amount();
            boolean holds = setting.clock() <= 1900 + 40 * step;
            lowered |= heldAtTop && step < 6;
            heldAtTop |= holds && step == 6;
            minutes += holds ? advice.minutes().orElseThrow() : 1;
            done.add(LabTrials.at(setting.clock(), step)
                    .ended(holds ? Outcome.HOLDS : Outcome.LOCKS_UP)
                    .minutes(holds ? advice.minutes().orElseThrow() : 1)
                    .peak(40 + setting.clock() / 100.0)
                    .volts(0.86 + 0.025 * step)
                    .logged());
            advice = next("pi4", done);
        }

        assertThat(advice.action()).isEqualTo(Advice.Action.STOP);
        assertThat(advice.why()).contains("Nothing is left to gain", "Keep it");
        assertThat(advice.bestIsKnownGood()).isTrue();
        Setting kept = advice.best().orElseThrow();
        // 2140 MHz is the edge at step 6: 2125 is the highest clock by 25 MHz there.
        assertThat(kept.clock()).isBetween(2100L, 2125L);
        assertThat(kept.voltage().amount()).isBetween(5L, 6L);
        assertThat(heldAtTop || lowered).isTrue();
        assertThat(done).hasSizeLessThan(25);
        assertThat(minutes / 60).isLessThan(4);
    }

    @Test
    void aLongHoldTellsMoreThanAShortOne() {
        LabTrials[] before = {stock("pi4", 1500).peak(48).volts(0.86)};
        double shortly = chance(before, LabTrials.at(2100, 2).minutes(0.2).logged());
        double longer = chance(before, LabTrials.at(2100, 2).minutes(45).logged());

        assertThat(longer).isGreaterThan(shortly + 0.1);
    }

    @Test
    void aReportWithoutALogWeighsLess() {
        LabTrials[] before = {stock("pi4", 1500).peak(48).volts(0.86)};
        double told = chance(before, LabTrials.at(2100, 2).ended(Outcome.LOCKS_UP));
        double logged =
                chance(before, LabTrials.at(2100, 2).ended(Outcome.LOCKS_UP).logged());

        assertThat(logged).isLessThan(told);
    }

    @Test
    void heatTellsOfHeatAndNotOfStability() {
        LabTrials[] before = {stock("pi4", 1500).peak(48).volts(0.86)};
        double none = chance(before, LabTrials.at(1500, 0));
        double hot =
                chance(before, LabTrials.at(2000, 2).ended(Outcome.THROTTLES).peak(83));

        assertThat(hot).isGreaterThanOrEqualTo(none - 0.02);
        Advice advice = advise(
                "pi4",
                stock("pi4", 1500).peak(60).volts(0.86),
                LabTrials.at(1900, 4).mask(0x60006).peak(82));
        assertThat(advice.action()).isEqualTo(Advice.Action.TRY);
        Setting next = advice.setting().orElseThrow();
        assertThat(next.clock() < 1900 || next.voltage().amount() < 4).isTrue();
    }

    @Test
    void aWeakSupplyIsImprovedAndThenALimit() {
        LabTrials weak = LabTrials.at(1900, 4).mask(0x50005);
        Advice once = advise("pi4", stock("pi4", 1500).peak(48), weak);
        assertThat(once.action()).isEqualTo(Advice.Action.IMPROVE);
        assertThat(once.why()).contains("supply under-voltage since boot", "Check the supply and its cable");

        Advice twice = advise("pi4", stock("pi4", 1500).peak(48), weak, weak);
        assertThat(twice.action()).isNotEqualTo(Advice.Action.IMPROVE);
        assertThat(twice.setting())
                .hasValueSatisfying(
                        next -> assertThat(next.clock() < 1900 || next.voltage().amount() < 4)
                                .isTrue());
    }

    @Test
    void runsAgainWhatDecidedNothingButNotForEver() {
        LabTrials only = LabTrials.at(1900, 2).ended(Outcome.BOOTS);
        Advice advice = advise("pi4", stock("pi4", 1500).peak(48).volts(0.86), only);

        assertThat(advice.setting()).contains(Setting.fixed(1900, 2));
        assertThat(advice.why()).contains("it only booted", "full load", "throttle mask");
        assertThat(advise("pi4", stock("pi4", 1500).peak(48).volts(0.86), only, only)
                        .why())
                .doesNotContain("it only booted");
    }

    @Test
    void whatALogContradictsTellsNothing() {
        LabTrials[] before = {stock("pi4", 1500).peak(48).volts(0.86)};

        assertThat(chance(before, LabTrials.at(2000, 2).contradicted()))
                .isEqualTo(chance(before, LabTrials.at(1500, 0).contradicted()));
    }

    @Test
    void anotherCoolingBeginsWithItsHeat() {
        List<Placed> trials = LabTrials.placed(
                stock("pi4", 1500).peak(48), LabTrials.at(2000, 4).peak(60));
        Advice advice = new Adviser("pi4", trials, BARE, LabTrials.TABLES).advise();

        assertThat(advice.setting().map(Setting::lines)).contains(List.of("arm_freq=1500"));
        assertThat(advice.why()).contains("Nothing held yet with this cooling");
    }

    /** What throttled for its supply under a fan is not run again under another cooling, whose heat is not known. */
    @Test
    void aWeakSupplyIsNotTriedAgainUnderAnotherCooling() {
        List<Placed> trials = LabTrials.placed(
                stock("pi4", 1500).peak(48).volts(0.86),
                LabTrials.at(1950, 5).mask(0x50005).peak(70));
        Advice advice = new Adviser("pi4", trials, BARE, LabTrials.TABLES).advise();

        assertThat(advice.setting().map(Setting::lines)).contains(List.of("arm_freq=1500"));
    }

    @Test
    void whereItIsTooHotAtStockCoolingComesFirst() {
        Advice advice = advise("pi4", stock("pi4", 1500).mask(0x80008).peak(84));

        assertThat(advice.action()).isEqualTo(Advice.Action.IMPROVE);
        assertThat(advice.setting()).isEmpty();
    }

    /** Each number is a trial: clock, step, outcome and heat in its digits. */
    @Property(tries = 25)
    void neverSuggestsAboveTheRangeOrInNeedOfForceTurboOrTooHot(
            @ForAll @Size(max = 12) List<@IntRange(max = 5999) Integer> numbers) {
        List<LabTrials> trials = new ArrayList<>();
        for (int number : numbers) {
            trials.add(LabTrials.at(1500 + number % 10 * 100, number / 10 % 10 - 1)
                    .ended(OUTCOMES.get(number / 1000))
                    .peak(40 + number / 100 % 10 * 5));
        }

        Advice advice = next("pi4", trials);

        Optional<Setting> tried = advice.action() == Advice.Action.IMPROVE ? Optional.empty() : advice.setting();
        assertThat(tried.map(setting -> setting.voltage().amount()).orElse(0L)).isLessThanOrEqualTo(6);
        assertThat(tried.map(Setting::clock).orElse(0L)).isLessThanOrEqualTo(2625);
        assertThat(advice.why()).isNotBlank();
        if (tried.isPresent() && !advice.why().contains("decides nothing")) {
            assertThat(advice.peak().map(HeatEstimate.Peak::most).orElse(0.0)).isLessThanOrEqualTo(80);
        }
    }

    private static LabTrials stock(String board, long clock) {
        return LabTrials.at(clock, 0)
                .board(board)
                .unset("over_voltage")
                .minutes(12)
                .logged();
    }

    private static double chance(LabTrials[] before, LabTrials more) {
        List<LabTrials> all = new ArrayList<>(Arrays.asList(before));
        all.add(more);
        return adviser("pi4", all).chances().orElseThrow().at(2100, 2);
    }

    private static Advice advise(String board, LabTrials... trials) {
        return adviser(board, List.of(trials)).advise();
    }

    private static Advice next(String board, List<LabTrials> trials) {
        return adviser(board, trials).next();
    }

    private static Adviser adviser(String board, List<LabTrials> trials) {
        List<Placed> placed = LabTrials.placed(
                trials.stream().map(trial -> trial.board(board)).toArray(LabTrials[]::new));
        return new Adviser(board, placed, LabTrials.LAB, LabTrials.TABLES);
    }
}
