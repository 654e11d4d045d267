package bootmend.trial;

import bootmend.tuning.TuningTables;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** Makes trials of an invented board in a school's robotics lab, one after the other in time. */
final class LabTrials {

    static final TuningTables TABLES = TuningTables.load();
    static final Surroundings LAB =
            new Surroundings("heat sink with fan", "the lab's bench supply", OptionalDouble.of(22));
    private static final Instant START = Instant.parse("2026-11-02T08:00:00Z");

    private final Map<String, Long> settings = new HashMap<>();
    private final Map<String, Double> scores = new TreeMap<>();
    private Outcome outcome = Outcome.HOLDS;
    private OptionalDouble minutes = OptionalDouble.of(60);
    private boolean load = true;
    private OptionalDouble peak = OptionalDouble.empty();
    private OptionalLong mask = OptionalLong.of(0);
    private Surroundings surroundings = LAB;
    private String board = "pi4";

    /** A trial of a pi4 that held for an hour under full load. */
    static LabTrials at(long clock, long step) {
        LabTrials trial = new LabTrials();
        trial.settings.put("arm_freq", clock);
        trial.settings.put("over_voltage", step);
        return trial;
    }

    LabTrials set(String key, long value) {
        settings.put(key, value);
        return this;
    }

    LabTrials unset(String key) {
        settings.remove(key);
        return this;
    }

    LabTrials board(String id) {
        board = id;
        return this;
    }

    LabTrials ended(Outcome how) {
        outcome = how;
        return this;
    }

    LabTrials minutes(double value) {
        minutes = OptionalDouble.of(value);
        return this;
    }

    LabTrials idle() {
        load = false;
        return this;
    }

    LabTrials peak(double celsius) {
        peak = OptionalDouble.of(celsius);
        return this;
    }

    LabTrials mask(long bits) {
        mask = OptionalLong.of(bits);
        return this;
    }

    LabTrials withoutMask() {
        mask = OptionalLong.empty();
        return this;
    }

    LabTrials score(String name, double value) {
        scores.put(name, value);
        return this;
    }

    LabTrials in(Surroundings where) {
        surroundings = where;
        return this;
    }

    Trial trial(int number) {
        return new Trial(
                "t" + number,
                START.plusSeconds(3600L * number),
                new Unit(board, "lab-07"),
                settings,
                outcome,
                new Run(minutes, load, peak, OptionalDouble.empty(), mask),
                scores,
                surroundings,
                "");
    }

    /** In the order given. */
    static List<Trial> list(LabTrials... trials) {
        return IntStream.range(0, trials.length)
                .mapToObj(i -> trials[i].trial(i + 1))
                .toList();
    }

    static List<Placed> placed(LabTrials... trials) {
        return Placement.of(list(trials), TABLES).placed();
    }
}
