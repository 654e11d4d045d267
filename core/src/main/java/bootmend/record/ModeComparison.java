package bootmend.record;

import bootmend.trial.Frontier;
import bootmend.trial.Placed;
import bootmend.trial.Standing;
import bootmend.trial.VoltageAxis;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Compares ways to set the voltage by what was measured, for their numbers cannot be compared. */
final class ModeComparison {

    private ModeComparison() {}

    /** A sentence on the highest clock that held on both axes with a measured voltage; none where there is no such clock. */
    static Optional<String> of(List<Placed> trials) {
        Map<Long, Placed> steps = lowest(trials, VoltageAxis.STEPS);
        Map<Long, Placed> shifts = lowest(trials, VoltageAxis.SHIFT);
        return steps.keySet().stream()
                .filter(shifts::containsKey)
                .max(Long::compare)
                .map(clock -> String.format(
                        Locale.ROOT,
                        "At %d MHz %.3f V were measured %s, and %.3f V %s: both held.",
                        clock,
                        volts(steps.get(clock)),
                        steps.get(clock).setting().voltage().words(),
                        volts(shifts.get(clock)),
                        shifts.get(clock).setting().voltage().words()));
    }

    /** The axes that trials stand on, that of the advice first. */
    static List<Frontier> frontiers(List<Placed> trials, VoltageAxis first) {
        return Arrays.stream(VoltageAxis.values())
                .sorted((one, other) -> Boolean.compare(other == first, one == first))
                .map(axis -> Frontier.of(axis, trials))
                .filter(frontier ->
                        frontier.axis() == first || !frontier.points().isEmpty())
                .toList();
    }

    private static Map<Long, Placed> lowest(List<Placed> trials, VoltageAxis axis) {
        Map<Long, Placed> lowest = new TreeMap<>();
        for (Placed trial : trials) {
            if (trial.setting().axis() == axis
                    && trial.is(Standing.Kind.HELD)
                    && trial.trial().run().volts().isPresent()) {
                lowest.merge(trial.setting().clock(), trial, (one, other) -> volts(one) <= volts(other) ? one : other);
            }
        }
        return lowest;
    }

    private static double volts(Placed trial) {
        return trial.trial().run().volts().orElseThrow();
    }
}
