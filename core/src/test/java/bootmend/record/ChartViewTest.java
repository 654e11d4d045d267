package bootmend.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bootmend.record.ChartView.Corner;
import bootmend.record.ChartView.Mark;
import bootmend.trial.Frontier;
import bootmend.trial.Outcome;
import bootmend.trial.Placed;
import bootmend.trial.Run;
import bootmend.trial.Setting;
import bootmend.trial.StepLimits;
import bootmend.trial.Surroundings;
import bootmend.trial.Trial;
import bootmend.trial.Unit;
import bootmend.trial.VoltageAxis;
import bootmend.trial.search.Advice;
import bootmend.trial.search.Chances;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class ChartViewTest {

    private static final Placed LONG = held(1500, 0, 50, 55);
    private static final Placed NO_BOOT = failed(1800, 2, Outcome.NO_BOOT);
    private static final Placed SHORT = held(1800, 3, 20, 64);
    private static final Placed LOCKED = failed(1900, 3, Outcome.LOCKS_UP);

    @Test
    void everyTrialIsAPointInTheReportsOrder() {
        ChartView view = ChartView.of(report(LOCKED, LONG, NO_BOOT, SHORT, LONG));

        assertThat(view.points())
                .extracting(ChartView.Point::mark)
                .containsExactly(Mark.LOCKS_UP, Mark.KNOWN_GOOD, Mark.NO_BOOT, Mark.HELD, Mark.KNOWN_GOOD);
        assertThat(view.points().get(0))
                .isEqualTo(new ChartView.Point(1900, OptionalDouble.of(3), OptionalDouble.empty(), Mark.LOCKS_UP));
        assertThat(view.points().get(3))
                .isEqualTo(new ChartView.Point(1800, OptionalDouble.of(3), OptionalDouble.of(64), Mark.HELD));
        assertThat(view.marks()).containsExactly(Mark.KNOWN_GOOD, Mark.HELD, Mark.NO_BOOT, Mark.LOCKS_UP);
    }

    @Test
    void aTrialThatShowsNeitherIsMarkedByWhatItLacks() {
        assertThat(mark(failed(1900, 4, Outcome.MISBEHAVES))).isEqualTo(Mark.MISBEHAVES);
        assertThat(mark(placed(1900, 4, Outcome.THROTTLES, run(60, true, 83, 0))))
                .isEqualTo(Mark.THROTTLED);
        assertThat(mark(placed(1900, 4, Outcome.HOLDS, run(60, true, 70, 0x80008))))
                .isEqualTo(Mark.THROTTLED);
        assertThat(mark(placed(1900, 4, Outcome.BOOTS, run(60, true, 70, 0)))).isEqualTo(Mark.UNDECIDED);
        assertThat(mark(placed(1900, 4, Outcome.HOLDS, run(60, false, 70, 0)))).isEqualTo(Mark.UNDECIDED);
        assertThat(mark(held(1900, 4, 14.9, 70))).isEqualTo(Mark.HELD_SHORT);
        assertThat(mark(held(1900, 4, 44.9, 70))).isEqualTo(Mark.HELD);
        assertThat(mark(held(1900, 4, 45, 70))).isEqualTo(Mark.KNOWN_GOOD);
    }

    @Test
    void everyMarkHasWordsOfItsOwn() {
        assertThat(Arrays.stream(Mark.values()).map(Mark::words))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
    }

    @Test
    void theFrontierIsTwoStairsThatNeverGoDown() {
        ChartView view = ChartView.of(report(LONG, NO_BOOT, SHORT, LOCKED));

        assertThat(view.held().corners())
                .containsExactly(new Corner(1440, 0), new Corner(1500, 0), new Corner(1500, 3), new Corner(1800, 3));
        assertThat(view.failed().corners())
                .containsExactly(new Corner(1800, 2), new Corner(1900, 2), new Corner(1900, 3), new Corner(1960, 3));
        assertThat(view.held().words()).contains("lowest voltage that held");
        assertThat(view.failed().words()).contains("highest voltage that failed");
    }

    @Test
    void whereNothingFailedOrHeldThereIsNoStair() {
        assertThat(ChartView.of(report(LONG)).failed().corners()).isEmpty();
        assertThat(ChartView.of(report(NO_BOOT)).held().corners()).isEmpty();
    }

    @Test
    void theAxesLeaveRoomAroundWhatIsDrawn() {
        ChartView view = ChartView.of(report(LONG, NO_BOOT, SHORT, LOCKED));

        assertThat(view.clock().low()).isEqualTo(1440);
        assertThat(view.clock().high()).isEqualTo(1960);
        assertThat(view.clock().tick()).isEmpty();
        assertThat(view.voltage())
                .isEqualTo(new ChartView.Axis("voltage step (over_voltage)", -1, 9.3, OptionalInt.of(1)));
        assertThat(view.peak()).isEqualTo(new ChartView.Axis("peak temperature, degC", 50, 95, OptionalInt.of(10)));
    }

    @Test
    void theAxesHoldLowStepsAndUnusualHeat() {
        ChartView wide = ChartView.of(report(held(1500, -16, 60, 20), held(1600, 0, 60, 118)));

        assertThat(wide.voltage().low()).isEqualTo(-17);
        assertThat(wide.voltage().tick()).hasValue(2);
        assertThat(wide.peak().low()).isEqualTo(15);
        assertThat(wide.peak().high()).isEqualTo(123);
        assertThat(wide.peak().tick()).hasValue(20);
    }

    @Test
    void withoutAnyTemperatureTheLimitsAreStillInTheLowerDrawing() {
        ChartView view = ChartView.of(report(NO_BOOT));

        assertThat(view.peakLimits())
                .extracting(ChartView.Limit::value)
                .containsExactly(80.0, 85.0)
                .allMatch(value ->
                        value > view.peak().low() && value < view.peak().high());
    }

    @Test
    void theLimitsHaveWords() {
        ChartView view = ChartView.of(report(LONG));

        assertThat(view.voltageLimits())
                .extracting(ChartView.Limit::words)
                .containsExactly(
                        "above step 6: needs force_turbo, which can void the warranty",
                        "step 8: end of the published range");
        assertThat(view.peakLimits())
                .extracting(ChartView.Limit::words)
                .satisfiesExactly(
                        hot -> assertThat(hot).startsWith("80 degC: "),
                        own -> assertThat(own).startsWith("85 degC: "));
        assertThat(view.peakLimits()).extracting(ChartView.Limit::wordsAbove).containsExactly(false, true);
    }

    @Test
    void theTitlesSayTheBoardAndTheFastestThatHeld() {
        assertThat(ChartView.of(report(LONG)).title()).isEqualTo("Trials of lab-07 (pi4)");
        assertThat(ChartView.of(report(LONG)).subtitle())
                .startsWith("Fastest that held: 1500 MHz at voltage step 0, known-good. ");
        assertThat(ChartView.of(report(SHORT)).subtitle()).contains("step 3, not known-good yet. ");
        assertThat(ChartView.of(report(NO_BOOT)).subtitle())
                .startsWith("Nothing held yet. ")
                .endsWith("The board maker's limits and your local rules come first.");
    }

    @Test
    void bandsFollowTheChances() {
        ChartView view = ChartView.of(report(LONG, NO_BOOT));

        assertThat(view.bands()).extracting(ChartView.Band::least).containsExactly(0.95, 0.8, 0.5, 0.2, 0.05);
        ChartView.Edge half = view.bands().get(2).edges().get(0);
        // At the lowest voltage drawn, -1, the chance is a half at 1880 MHz.
        assertThat(half.amount()).isEqualTo(-1);
        assertThat(half.to()).isCloseTo(1880, within(2.0));
        // 0.8 at 1820 MHz.
        assertThat(view.bands().get(1).edges().get(0).to()).isCloseTo(1820, within(2.0));
        assertThat(view.bands().get(0).edges()).allMatch(edge -> edge.from() == 1440 && edge.to() >= edge.from());
    }

    @Test
    void whatWouldBeNextIsThere() {
        assertThat(ChartView.of(report(LONG)).next())
                .containsExactly(new ChartView.Next(1850, 4, 1, "1850 MHz at voltage step 4"));
    }

    @Test
    void anotherBoardStandsBeside() {
        ChartView view = ChartView.compared(report(LONG), report(NO_BOOT, held(2100, 5, 50, 70)), "lab-08");

        assertThat(view.title()).isEqualTo("Trials of lab-07 (pi4) and lab-08");
        assertThat(view.clock().high()).isEqualTo(2160);
        assertThat(view.other()).hasValueSatisfying(other -> {
            assertThat(other.held().corners()).contains(new Corner(2100, 5));
            assertThat(other.points()).hasSize(2);
        });
    }

    @Test
    void withoutATrialThereIsNoChart() {
        TrialReport none = report();
        assertThatThrownBy(() -> ChartView.of(none)).isInstanceOf(IllegalArgumentException.class);
    }

    private static Mark mark(Placed trial) {
        return ChartView.of(report(trial)).points().get(0).mark();
    }

    private static TrialReport report(Placed... trials) {
        Frontier frontier = Frontier.of(VoltageAxis.STEPS, List.of(trials));
        Optional<Placed> best = frontier.best();
        Advice advice = new Advice(
                Advice.Action.STOP,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "Enough.",
                "",
                List.of(),
                List.of(Setting.fixed(1850, 4)),
                List.of(),
                Optional.empty(),
                "",
                best.map(Placed::setting),
                best.map(trial -> trial.trial().isKnownGood()).orElse(false));
        return new TrialReport(
                new Unit("pi4", "lab-07"),
                List.of(trials),
                List.of(frontier),
                advice,
                Optional.of(new Chances((clock, amount) ->
                        Math.max(0, Math.min(1, (2000 + 20 * amount - clock) / 200)))),
                new StepLimits(6, 8),
                List.of(),
                List.of(),
                List.of());
    }

    private static Placed held(long clock, long step, double minutes, double peak) {
        return placed(clock, step, Outcome.HOLDS, run(minutes, true, peak, 0));
    }

    private static Placed failed(long clock, long step, Outcome outcome) {
        return placed(
                clock,
                step,
                outcome,
                new Run(
                        OptionalDouble.empty(),
                        false,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalLong.empty()));
    }

    private static Run run(double minutes, boolean fullLoad, double peak, long mask) {
        return new Run(
                OptionalDouble.of(minutes),
                fullLoad,
                OptionalDouble.of(peak),
                OptionalDouble.empty(),
                OptionalLong.of(mask));
    }

    private static Placed placed(long clock, long step, Outcome outcome, Run run) {
        return new Placed(
                new Trial(
                        "",
                        Instant.parse("2026-11-02T08:00:00Z"),
                        new Unit("pi4", "lab-07"),
                        Map.of("arm_freq", clock, "over_voltage", step),
                        outcome,
                        run,
                        Map.of(),
                        Surroundings.UNKNOWN,
                        ""),
                Setting.fixed(clock, step));
    }
}
