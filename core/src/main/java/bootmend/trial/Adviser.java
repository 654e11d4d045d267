package bootmend.trial;

import bootmend.tuning.TuningTables;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Finds the next trial of a board: one step more voltage after a failure, a little more clock after a hold, and a stop
 * before the published range, {@code force_turbo} or 80 degC.
 */
public final class Adviser {

    /**
     * How much more clock after a hold, in MHz. A step this small (3 % of a pi4's stock clock) costs one start of the
     * board when it fails, and then tells its edge to within that much (common practice, no source).
     */
    public static final long CLOCK_STEP = 50;

    private final String board;
    private final List<Placed> trials;
    private final Frontier frontier;
    private final Limits limits;
    private final TuningTables tables;

    /**
     * @param board board id
     * @param trials of one physical board, oldest first
     * @param heat what is known of its heat
     * @param surroundings as the next trial will have them
     */
    public Adviser(
            String board, List<Placed> trials, HeatEstimate heat, Surroundings surroundings, TuningTables tables) {
        this.board = board;
        this.trials = List.copyOf(trials);
        this.frontier = Frontier.of(trials);
        this.limits = new Limits(tables, heat, surroundings.ambient());
        this.tables = tables;
    }

    public Advice advise() {
        if (trials.isEmpty()) {
            return first();
        }
        Placed latest = trials.get(trials.size() - 1);
        if (latest.is(Verdict.Kind.THROTTLED)) {
            return advice(Advice.Action.MEND, Optional.of(latest.setting()), throttled(latest), List.of());
        }
        if (latest.trial().run().peak().orElse(0) >= LogSummary.HOT) {
            return advice(
                    Advice.Action.MEND,
                    Optional.of(latest.setting()),
                    "The last trial reached "
                            + Math.round(latest.trial().run().peak().getAsDouble())
                            + " degC. Cool the board better, then run this "
                            + "setting again; more voltage or clock would only heat it more.",
                    List.of());
        }
        if (latest.is(Verdict.Kind.UNDECIDED) && !frontier.holds(latest.setting())) {
            return undecided(latest);
        }
        return step();
    }

    private Advice first() {
        OptionalLong stock = Placement.stockClock(board, tables);
        if (stock.isEmpty()) {
            return advice(
                    Advice.Action.STOP,
                    Optional.empty(),
                    "There is no trial yet and no published stock clock for " + board
                            + ". Add a first trial at the clock this board runs as shipped.",
                    List.of());
        }
        return advice(
                Advice.Action.TRY,
                Optional.of(new Setting(stock.getAsLong(), 0)),
                "There is no trial yet. A "
                        + "run at stock gives the heat and the scores that everything later is held against.",
                List.of());
    }

    private String throttled(Placed latest) {
        long mask = latest.trial().run().mask().orElse(0);
        String told = mask == 0 ? "" : " (" + String.join(", ", LogSummary.words(mask, tables.throttleBits())) + ")";
        return "The last trial throttled" + told + ": that is heat or supply, not too little voltage. "
                + (ThrottleMask.tellsOfSupply(mask)
                        ? "Check the supply and its cable"
                        : "Cool the board better, and " + "check the supply")
                + ", then run this setting again.";
    }

    private Advice undecided(Placed latest) {
        Optional<String> stop = limits.passed(latest.setting());
        if (stop.isPresent()) {
            return step();
        }
        return advice(
                Advice.Action.TRY,
                Optional.of(latest.setting()),
                "The last trial decides nothing: " + latest.trial().verdict().why()
                        + ". Run it again under full load and write the throttle mask down.",
                List.of());
    }

    private Advice step() {
        List<String> stops = new ArrayList<>();
        for (Candidate candidate : candidates()) {
            Optional<String> stop = limits.passed(candidate.setting());
            if (stop.isEmpty()) {
                return advice(Advice.Action.TRY, Optional.of(candidate.setting()), candidate.why(), stops);
            }
            stops.add(stop.get());
        }
        Optional<Placed> best = frontier.best();
        if (best.isPresent() && !best.get().trial().isKnownGood()) {
            return advice(
                    Advice.Action.RUN_LONG,
                    best.map(Placed::setting),
                    "Nothing faster is left to try. This is the "
                            + "fastest that held; run it for " + (int) Verdict.KNOWN_GOOD_MINUTES
                            + " minutes under full load to "
                            + "make it known-good.",
                    stops);
        }
        return advice(
                Advice.Action.STOP,
                Optional.empty(),
                best.isPresent()
                        ? "Nothing faster is left to try, and the fastest that held is known-good: keep it."
                        : "Nothing held yet, and no setting is left that is worth trying. Put the board back to stock and look at its "
                                + "cooling and supply.",
                stops);
    }

    /** A setting to think about, and why it would come next. */
    private record Candidate(Setting setting, String why) {}

    /** What could come next, the most wanted first. */
    private List<Candidate> candidates() {
        List<Candidate> candidates = new ArrayList<>();
        Optional<Frontier.Point> failing = frontier.lowestFailing();
        failing.ifPresent(point -> candidates.add(moreVoltage(point)));
        Optional<Setting> best = frontier.best().map(Placed::setting);
        if (best.isPresent()) {
            long clock = best.get().clock() + CLOCK_STEP;
            if (failing.isEmpty() || clock < failing.get().clock()) {
                candidates.add(moreClock(best.get(), clock));
            }
        } else if (Placement.stockClock(board, tables).isPresent()) {
            Setting stock = new Setting(Placement.stockClock(board, tables).getAsLong(), 0);
            if (trials.stream().noneMatch(trial -> trial.setting().equals(stock))) {
                candidates.add(new Candidate(
                        stock, "Nothing held yet. A run at stock tells whether the board itself is " + "well."));
            }
        }
        return candidates;
    }

    private static Candidate moreVoltage(Frontier.Point point) {
        Placed failed = point.failed().orElseThrow();
        String inferred = failed.setting().clock() == point.clock()
                ? ""
                : " at " + failed.setting().clock() + " MHz, and a higher clock never needs less";
        return new Candidate(
                new Setting(point.clock(), failed.setting().step() + 1),
                "Step " + failed.setting().step() + " failed" + inferred + ": one step more voltage.");
    }

    private Candidate moreClock(Setting best, long clock) {
        long step = Math.max(
                best.step(),
                frontier.failedStep(clock).map(failed -> failed + 1).orElse(best.step()));
        return new Candidate(
                new Setting(clock, step),
                best.words() + " held: " + CLOCK_STEP
                        + " MHz more clock, a small step, so that a failure costs one start and shows the limit more exactly.");
    }

    private Advice advice(Advice.Action action, Optional<Setting> setting, String why, List<String> stops) {
        Optional<HeatEstimate.Peak> peak = setting.flatMap(limits::peak);
        Optional<Placed> best = frontier.best();
        return new Advice(
                action,
                setting,
                why,
                stops,
                peak,
                setting.isEmpty() || peak.isPresent() ? "" : limits.noPeak(),
                best.map(Placed::setting),
                best.map(placed -> placed.trial().isKnownGood()).orElse(false));
    }
}
