package bootmend.trial.search;

import bootmend.trial.Frontier;
import bootmend.trial.HeatEstimate;
import bootmend.trial.LogSummary;
import bootmend.trial.Placed;
import bootmend.trial.Placement;
import bootmend.trial.Setting;
import bootmend.trial.Standing;
import bootmend.trial.Surroundings;
import bootmend.trial.ThrottleMask;
import bootmend.trial.Trial;
import bootmend.trial.VoltageAxis;
import bootmend.tuning.TuningTables;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Finds the next trial of a board on its way to the highest clock that holds and then the lowest voltage there, in as few
 * minutes of load as may be, within the published ranges, without {@code force_turbo} and below 80 degC.
 */
public final class Adviser {

    /** Minutes of a first run, long enough for its peak to count as steady. */
    private static final double FIRST_MINUTES = HeatEstimate.STEADY_MINUTES;

    private final String board;
    private final List<Placed> trials;
    private final AxisChoice choice;
    private final Frontier frontier;
    private final Surroundings surroundings;
    private final Limits limits;
    private final TuningTables tables;

    /**
     * @param board board id
     * @param trials of one physical board, oldest first
     * @param surroundings as the next trial will have them
     */
    public Adviser(String board, List<Placed> trials, Surroundings surroundings, TuningTables tables) {
        this.board = board;
        this.trials = List.copyOf(trials);
        this.choice = AxisChoice.of(board, trials, tables);
        this.frontier = Frontier.of(choice.axis(), trials);
        this.surroundings = surroundings;
        this.limits = new Limits(board, trials, surroundings, tables);
        this.tables = tables;
    }

    /** The voltage axis that it goes on with. */
    public VoltageAxis axis() {
        return choice.axis();
    }

    /** What to do next, with what each outcome would lead to. */
    public Advice advise() {
        return before().orElseGet(() -> hunt().map(hunt -> new SearchWords(hunt, choice, drafts()).advice())
                .orElseGet(this::unknownBoard));
    }

    /** What to do next, in short: for who asks very often. */
    public Advice next() {
        return before().orElseGet(() -> hunt().map(hunt -> new SearchWords(hunt, choice, drafts()).next())
                .orElseGet(this::unknownBoard));
    }

    /** How likely settings are to hold, as far as trials tell; empty where nothing can be said. */
    public Optional<Chances> chances() {
        return hunt().map(Hunt::chances);
    }

    private Drafts drafts() {
        return new Drafts(
                limits,
                frontier.best()
                        .or(() -> Arrays.stream(VoltageAxis.values())
                                .map(axis -> Frontier.of(axis, trials))
                                .flatMap(other -> other.best().stream())
                                .max(Comparator.comparingLong(
                                        best -> best.setting().clock()))));
    }

    private Optional<Hunt> hunt() {
        return stock().isEmpty() && trials.isEmpty()
                ? Optional.empty()
                : Hunt.of(board, start(), trials, frontier, surroundings, limits);
    }

    /** Where a search begins: the stock clock, else the lowest that ran. */
    private long start() {
        return stock().orElseGet(() -> trials.stream()
                        .mapToLong(trial -> trial.setting().clock())
                        .min()
                        .orElseThrow()
                / Ground.CLOCK_STEP
                * Ground.CLOCK_STEP);
    }

    private OptionalLong stock() {
        return Placement.stockClock(board, tables);
    }

    private Advice unknownBoard() {
        return drafts().of(
                        Advice.Action.STOP,
                        Optional.empty(),
                        0,
                        "There is no trial yet and no published stock clock for " + board
                                + ". Add a first trial at the clock this board runs as shipped.",
                        List.of());
    }

    /** What has to be done before any search makes sense. */
    private Optional<Advice> before() {
        if (trials.isEmpty()) {
            return stock().isEmpty() ? Optional.empty() : Optional.of(first("There is no trial yet."));
        }
        Placed latest = trials.get(trials.size() - 1);
        if (latest.is(Standing.Kind.THROTTLED) && !isRepeated(latest)) {
            long mask = latest.trial().run().mask().orElse(0);
            boolean here = latest.trial().surroundings().sameCooling(surroundings)
                    && latest.trial().run().peak().orElse(0) < LogSummary.HOT
                    && limits.heat(latest.setting()).isEmpty();
            if (here && ThrottleMask.tellsOfSupply(mask)) {
                return Optional.of(supply(latest, mask));
            }
        }
        if (latest.is(Standing.Kind.UNDECIDED) && !isRepeated(latest) && isOpen(latest.setting())) {
            return Optional.of(undecided(latest));
        }
        if (stock().isPresent()) {
            Optional<String> hot = limits.throttled(atStock());
            if (hot.isPresent()) {
                return Optional.of(cooling(hot.get()));
            }
        }
        boolean coolingIsNew = trials.stream()
                .noneMatch(trial ->
                        trial.trial().surroundings().sameCooling(surroundings) && trial.is(Standing.Kind.HELD));
        boolean throttledHere = trials.stream()
                .anyMatch(trial ->
                        trial.trial().surroundings().isLike(surroundings) && trial.is(Standing.Kind.THROTTLED));
        Setting atStock = atStock();
        if (coolingIsNew && stock().isPresent() && limits.passed(atStock).isEmpty()) {
            boolean heldBefore = trials.stream().anyMatch(trial -> trial.is(Standing.Kind.HELD));
            return ranAtStock()
                    ? Optional.empty()
                    : Optional.of(first(
                            heldBefore || throttledHere
                                    ? "Nothing held yet with this cooling, so that its heat is not known."
                                    : "Nothing held yet."));
        }
        return Optional.empty();
    }

    private boolean ranAtStock() {
        return trials.stream()
                .filter(trial -> trial.trial().surroundings().sameCooling(surroundings))
                .anyMatch(trial -> trial.setting().clock() == stock().orElse(0)
                        && trial.setting().voltage().amount() == 0
                        && !trial.is(Standing.Kind.UNDECIDED));
    }

    private Setting atStock() {
        return new Setting(stock().orElse(0), Placement.left(board, tables));
    }

    private Advice first(String why) {
        return drafts().of(
                        Advice.Action.TRY,
                        Optional.of(atStock()),
                        FIRST_MINUTES,
                        why + " A run at stock gives the heat and the scores that everything later is held against.",
                        List.of());
    }

    /** Whether the trial before it was of the same setting and told the same. */
    private boolean isRepeated(Placed latest) {
        return trials.size() > 1
                && trials.get(trials.size() - 2).setting().equals(latest.setting())
                && trials.get(trials.size() - 2).is(latest.trial().standing().kind());
    }

    private boolean isOpen(Setting setting) {
        return limits.passed(setting).isEmpty()
                && setting.axis() == choice.axis()
                && frontier.best()
                        .filter(best -> best.setting().demandsAtLeast(setting))
                        .isEmpty();
    }

    private Advice cooling(String why) {
        return drafts().of(
                        Advice.Action.IMPROVE,
                        Optional.empty(),
                        0,
                        why + " Improve cooling and supply, give them their own names, and run at stock again.",
                        List.of());
    }

    private Advice supply(Placed latest, long mask) {
        return drafts().of(
                        Advice.Action.IMPROVE,
                        Optional.of(latest.setting()),
                        FIRST_MINUTES,
                        "The last trial throttled ("
                                + String.join(", ", LogSummary.words(mask, tables.throttleBits()))
                                + "): that is the supply, not too little voltage. Check the supply and its cable, then run "
                                + "this setting again; under another supply, give that its own name.",
                        List.of());
    }

    private Advice undecided(Placed latest) {
        Trial trial = latest.trial();
        return drafts().of(
                        Advice.Action.TRY,
                        Optional.of(latest.setting()),
                        FIRST_MINUTES,
                        "The last trial decides nothing: " + trial.standing().why()
                                + ". Run it again under full load, and let a log and the throttle mask tell how it went.",
                        List.of());
    }
}
