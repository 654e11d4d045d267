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
public final class LabTrials {

    public static final TuningTables TABLES = TuningTables.load();
    public static final Surroundings LAB =
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
    private OptionalDouble volts = OptionalDouble.empty();
    private Grounds grounds = Grounds.TOLD;
    private String board = "pi4";

    /** A trial of a pi4 that held for an hour under full load. */
    public static LabTrials at(long clock, long step) {
        LabTrials trial = new LabTrials();
        trial.settings.put("arm_freq", clock);
        trial.settings.put("over_voltage", step);
        return trial;
    }

    public LabTrials set(String key, long value) {
        settings.put(key, value);
        return this;
    }

    public LabTrials unset(String key) {
        settings.remove(key);
        return this;
    }

    public LabTrials board(String id) {
        board = id;
        return this;
    }

    public LabTrials ended(Outcome how) {
        outcome = how;
        return this;
    }

    public LabTrials minutes(double value) {
        minutes = OptionalDouble.of(value);
        return this;
    }

    public LabTrials idle() {
        load = false;
        return this;
    }

    public LabTrials peak(double celsius) {
        peak = OptionalDouble.of(celsius);
        return this;
    }

    public LabTrials mask(long bits) {
        mask = OptionalLong.of(bits);
        return this;
    }

    /** A log of the board's backs it. */
    public LabTrials logged() {
        grounds = new Grounds("", "0".repeat(64), List.of());
        return this;
    }

    public LabTrials contradicted() {
        grounds = new Grounds("", "0".repeat(64), List.of("the log never reaches 2000 MHz"));
        return this;
    }

    public LabTrials volts(double measured) {
        volts = OptionalDouble.of(measured);
        return this;
    }

    public LabTrials withoutMask() {
        mask = OptionalLong.empty();
        return this;
    }

    public LabTrials score(String name, double value) {
        scores.put(name, value);
        return this;
    }

    public LabTrials in(Surroundings where) {
        surroundings = where;
        return this;
    }

    public Trial trial(int number) {
        return new Trial(
                "t" + number,
                START.plusSeconds(3600L * number),
                new Unit(board, "lab-07"),
                settings,
                outcome,
                new Run(minutes, load, peak, OptionalDouble.empty(), volts, mask),
                scores,
                surroundings,
                grounds,
                "");
    }

    /** In the order given. */
    public static List<Trial> list(LabTrials... trials) {
        return IntStream.range(0, trials.length)
                .mapToObj(i -> trials[i].trial(i + 1))
                .toList();
    }

    public static List<Placed> placed(LabTrials... trials) {
        return Placement.of(list(trials), TABLES).placed();
    }
}
