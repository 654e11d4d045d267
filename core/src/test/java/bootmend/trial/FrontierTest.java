package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** The frontier by hand-worked cases, and monotone for any trials. */
class FrontierTest {

    @Test
    void highestFailedAndLowestHeldOfEachClock() {
        Frontier frontier = Frontier.of(
                VoltageAxis.STEPS,
                LabTrials.placed(
                        LabTrials.at(2000, 2).ended(Outcome.NO_BOOT),
                        LabTrials.at(2000, 3).ended(Outcome.LOCKS_UP),
                        LabTrials.at(2000, 5),
                        LabTrials.at(2000, 4)));

        assertThat(frontier.points()).hasSize(1);
        assertThat(line(frontier)).containsExactly("2000 failed 3 held 4");
        assertThat(frontier.contradictions()).isEmpty();
    }

    @Test
    void aHigherClockNeverNeedsLess() {
        Frontier frontier = Frontier.of(
                VoltageAxis.STEPS,
                LabTrials.placed(
                        LabTrials.at(1800, 3).ended(Outcome.LOCKS_UP),
                        LabTrials.at(1900, 1).ended(Outcome.NO_BOOT),
                        LabTrials.at(1700, 5),
                        LabTrials.at(2000, 4)));

        assertThat(line(frontier))
                .containsExactly(
                        "1700 failed - held 4", "1800 failed 3 held 4", "1900 failed 3 held 4", "2000 failed 3 held 4");
        assertThat(frontier.points().get(2).failed().map(trial -> trial.trial().id()))
                .contains("t1");
        assertThat(frontier.points().get(0).held().map(trial -> trial.trial().id()))
                .contains("t4");
    }

    @Test
    void aHoldThatAFailureContradictsIsNamedAndDoesNotCount() {
        Frontier frontier = Frontier.of(
                VoltageAxis.STEPS,
                LabTrials.placed(
                        LabTrials.at(1800, 2),
                        LabTrials.at(2100, 3),
                        LabTrials.at(2000, 4).ended(Outcome.MISBEHAVES)));

        assertThat(frontier.contradictions()).singleElement().satisfies(pair -> {
            assertThat(pair.held().trial().id()).isEqualTo("t2");
            assertThat(pair.failed().trial().id()).isEqualTo("t3");
            assertThat(pair.words())
                    .contains("2000 MHz at voltage step 4 failed (t3)", "2100 MHz at voltage step 3 held (t2)");
        });
        assertThat(frontier.best().map(Placed::setting)).contains(Setting.fixed(1800, 2));
    }

    @Test
    void theSameSettingThatHeldAndFailedIsAContradiction() {
        assertThat(Frontier.of(
                                VoltageAxis.STEPS,
                                LabTrials.placed(
                                        LabTrials.at(2000, 4),
                                        LabTrials.at(2000, 4).ended(Outcome.LOCKS_UP)))
                        .contradictions())
                .hasSize(1);
    }

    @Test
    void whatDecidesNothingIsNoPoint() {
        assertThat(Frontier.of(
                                VoltageAxis.STEPS,
                                LabTrials.placed(
                                        LabTrials.at(2000, 4).idle(),
                                        LabTrials.at(2100, 4).mask(0x2),
                                        LabTrials.at(2200, 4).ended(Outcome.BOOTS)))
                        .points())
                .isEmpty();
    }

    @Test
    void theKnownGoodTrialStandsForASettingThatHeldTwice() {
        Frontier frontier = Frontier.of(
                VoltageAxis.STEPS,
                LabTrials.placed(
                        LabTrials.at(2000, 4).minutes(5),
                        LabTrials.at(2000, 4).minutes(50),
                        LabTrials.at(2000, 4).minutes(5)));

        assertThat(frontier.best().map(trial -> trial.trial().id())).contains("t2");
    }

    /** Each number is a trial: clock, step and outcome in its digits. */
    @Property(tries = 300)
    void isMonotoneAndNeverContradictsItself(@ForAll @Size(max = 40) List<@IntRange(max = 299) Integer> numbers) {
        LabTrials[] trials = numbers.stream()
                .map(number -> LabTrials.at(1500 + number % 10 * 50, number / 10 % 10 - 2)
                        .ended(
                                number / 100 == 0
                                        ? Outcome.HOLDS
                                        : number / 100 == 1 ? Outcome.LOCKS_UP : Outcome.BOOTS))
                .toArray(LabTrials[]::new);

        Frontier frontier = Frontier.of(VoltageAxis.STEPS, LabTrials.placed(trials));

        List<Long> failed = new ArrayList<>();
        List<Long> held = new ArrayList<>();
        for (Frontier.Point point : frontier.points()) {
            step(point.failed()).ifPresent(failed::add);
            step(point.held()).ifPresent(held::add);
            if (point.failed().isPresent() && point.held().isPresent()) {
                assertThat(step(point.failed()).get())
                        .isLessThan(step(point.held()).get());
            }
        }
        assertThat(failed).isSorted();
        assertThat(held).isSorted();
    }

    @Test
    void otherWaysToSetTheVoltageStayOut() {
        List<Placed> trials = LabTrials.placed(
                LabTrials.at(2000, 4),
                LabTrials.at(2100, 0).unset("over_voltage"),
                LabTrials.at(2200, 0).unset("over_voltage").set("over_voltage_delta", 50_000));

        assertThat(line(Frontier.of(VoltageAxis.STEPS, trials))).containsExactly("2000 failed - held 4");
        assertThat(line(Frontier.of(VoltageAxis.SHIFT, trials)))
                .containsExactly("2100 failed - held 0", "2200 failed - held 50000");
    }

    private static Optional<Long> step(Optional<Placed> trial) {
        return trial.map(placed -> placed.setting().voltage().amount());
    }

    private static List<String> line(Frontier frontier) {
        return frontier.points().stream()
                .map(point -> point.clock() + " failed "
                        + step(point.failed()).map(String::valueOf).orElse("-") + " held "
                        + step(point.held()).map(String::valueOf).orElse("-"))
                .toList();
    }
}
