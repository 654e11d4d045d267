package bootmend.trial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a board is known to need on one voltage axis: for each clock tried, the highest voltage that failed and the lowest
 * that held, made monotone. What fails at a clock fails at every higher one; what holds at a clock holds at every lower one.
 *
 * <p>Where a trial held that could do no more than one that failed, the two contradict each other. Then the failure
 * counts and the hold does not: something else differed, and the careful reading is the worse one.
 *
 * @param axis the scale of its voltages
 * @param points one for each clock that failed or held, lowest clock first
 * @param contradictions each pair that cannot both be so, at most {@value #MAX_CONTRADICTIONS}
 */
public record Frontier(VoltageAxis axis, List<Point> points, List<Contradiction> contradictions) {

    private static final int MAX_CONTRADICTIONS = 20;

    public Frontier {
        points = List.copyOf(points);
        contradictions = List.copyOf(contradictions);
    }

    /**
     * A clock and what is known there.
     *
     * @param clock in MHz
     * @param failed the trial with the highest failing voltage, at this clock or a lower one
     * @param held the trial with the lowest holding voltage, at this clock or a higher one
     */
    public record Point(long clock, Optional<Placed> failed, Optional<Placed> held) {}

    /** A trial that failed, and one that held though it asked at least as much of the board. */
    public record Contradiction(Placed failed, Placed held) {

        /** In a sentence. */
        public String words() {
            return failed.setting().words() + " failed (" + failed.trial().id() + "), but "
                    + held.setting().words()
                    + " held (" + held.trial().id()
                    + "), which asks at least as much of the board; the failure counts. "
                    + "Try again, or correct the wrong one.";
        }
    }

    /** @param all trials of one board; those on other axes are left out */
    public static Frontier of(VoltageAxis axis, List<Placed> all) {
        List<Placed> trials =
                all.stream().filter(trial -> trial.setting().axis() == axis).toList();
        List<Placed> failures = of(trials, Standing.Kind.FAILED);
        List<Placed> holds = new ArrayList<>();
        List<Contradiction> contradictions = new ArrayList<>();
        for (Placed hold : of(trials, Standing.Kind.HELD)) {
            List<Placed> against = failures.stream()
                    .filter(failure -> hold.setting().demandsAtLeast(failure.setting()))
                    .toList();
            if (against.isEmpty()) {
                holds.add(hold);
            }
            against.stream()
                    .limit(MAX_CONTRADICTIONS - contradictions.size())
                    .forEach(failure -> contradictions.add(new Contradiction(failure, hold)));
        }
        List<Point> points = trials.stream()
                .filter(trial -> trial.is(Standing.Kind.FAILED) || trial.is(Standing.Kind.HELD))
                .map(trial -> trial.setting().clock())
                .distinct()
                .sorted()
                .map(clock -> new Point(clock, highestFailed(failures, clock), lowestHeld(holds, clock)))
                .toList();
        return new Frontier(axis, points, contradictions);
    }

    private static List<Placed> of(List<Placed> trials, Standing.Kind kind) {
        return trials.stream().filter(trial -> trial.is(kind)).toList();
    }

    /** Among trials with the same voltage, the one whose clock is nearest stands for all. */
    private static Optional<Placed> highestFailed(List<Placed> failures, long clock) {
        return failures.stream()
                .filter(trial -> trial.setting().clock() <= clock)
                .max(Comparator.comparingLong(
                                (Placed trial) -> trial.setting().voltage().amount())
                        .thenComparingLong(trial -> trial.setting().clock()));
    }

    private static Optional<Placed> lowestHeld(List<Placed> holds, long clock) {
        return holds.stream()
                .filter(trial -> trial.setting().clock() >= clock)
                .min(Comparator.comparingLong(
                                (Placed trial) -> trial.setting().voltage().amount())
                        .thenComparingLong(trial -> trial.setting().clock())
                        .thenComparing(trial -> !trial.trial().isKnownGood()));
    }

    /** The hold at the highest clock, with its lowest voltage; one that is known-good before one that is not. */
    public Optional<Placed> best() {
        return points.stream()
                .flatMap(point -> point.held().stream())
                .max(Comparator.comparingLong((Placed trial) -> trial.setting().clock())
                        .thenComparingLong(trial -> -trial.setting().voltage().amount()));
    }
}
