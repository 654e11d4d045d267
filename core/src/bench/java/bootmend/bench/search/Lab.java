package bootmend.bench.search;

import bootmend.trial.Grounds;
import bootmend.trial.Outcome;
import bootmend.trial.Placed;
import bootmend.trial.Placement;
import bootmend.trial.Run;
import bootmend.trial.Setting;
import bootmend.trial.Surroundings;
import bootmend.trial.Trial;
import bootmend.trial.Unit;
import bootmend.trial.VoltageMode;
import bootmend.tuning.TuningTables;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;

/** Runs trials on a drawn board, reports them as a user would, and counts what they cost. */
final class Lab {

    private static final Instant START = Instant.parse("2026-11-02T08:00:00Z");

    final TuningTables tables;
    final Random random;
    final Flaws flaws;
    DrawnBoard board;
    final List<Trial> trials = new ArrayList<>();
    double load;
    int hot;
    int beyond;

    /**
     * What goes wrong with reports.
     *
     * @param wrong share of outcomes told the other way round
     * @param unlogged share of trials without a log
     */
    record Flaws(double wrong, double unlogged) {}

    Lab(DrawnBoard board, TuningTables tables, Random random, Flaws flaws) {
        this.board = board;
        this.tables = tables;
        this.random = random;
        this.flaws = flaws;
    }

    Surroundings surroundings() {
        return new Surroundings(board.cooling.words(), "bench", OptionalDouble.of(board.ambient));
    }

    List<Placed> placed() {
        return Placement.of(trials, tables).placed();
    }

    /** Runs one trial. Gives back whether it held as far as its user knows, without throttling. */
    boolean run(Setting setting, double minutes) {
        double level = setting.voltage().level();
        double clock = setting.clock();
        if (level > board.family.most || clock < board.family.stock) {
            beyond++;
        }
        double end = board.fails(clock, level, minutes, random);
        boolean held = end > minutes;
        double ran = Math.min(end, minutes);
        load += ran;
        double peak = board.peak(clock, level, ran);
        boolean tooHot = ran > 0 && peak > 80;
        if (tooHot) {
            hot++;
        }
        boolean tooMuch = ran > 0 && board.isTooMuchForTheSupply(clock, level);
        boolean logged = random.nextDouble() >= flaws.unlogged();
        boolean wrong = random.nextDouble() < flaws.wrong();
        boolean told = held != wrong;
        List<String> contradictions =
                logged && told && !held ? List.of("the log ends after " + ran + " minutes") : List.of();
        Outcome outcome = told ? Outcome.HOLDS : end == 0 ? Outcome.NO_BOOT : Outcome.LOCKS_UP;
        double reading = Math.round((peak + 0.3 * random.nextGaussian()) * 10) / 10.0;
        OptionalDouble minutesTold = OptionalDouble.of(told ? minutes : Math.round(ran * 10) / 10.0);
        OptionalDouble volts = logged && ran > 0
                ? OptionalDouble.of(board.volts(clock, level) + 0.002 * random.nextGaussian())
                : OptionalDouble.empty();
        long mask = tooMuch ? 0x50005 : tooHot ? 0x60006 : 0;
        Run run = new Run(
                minutesTold,
                true,
                ran > 0.2 ? OptionalDouble.of(reading) : OptionalDouble.empty(),
                OptionalDouble.empty(),
                volts,
                told || mask != 0 ? OptionalLong.of(mask) : OptionalLong.empty());
        Map<String, Long> settings = new HashMap<>();
        settings.put("arm_freq", setting.clock());
        if (setting.voltage().mode() != VoltageMode.LEFT) {
            settings.put(setting.axis().key(), setting.voltage().amount());
        }
        trials.add(new Trial(
                "t" + (trials.size() + 1),
                START.plusSeconds(3600L * trials.size()),
                new Unit(board.family.board, "drawn"),
                settings,
                outcome,
                run,
                Map.of(),
                surroundings(),
                new Grounds("", logged ? "0".repeat(64) : "", contradictions),
                ""));
        return told && mask == 0 && contradictions.isEmpty();
    }
}
