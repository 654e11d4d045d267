package bootmend.trial.search;

import bootmend.trial.Frontier;
import bootmend.trial.HeatEstimate;
import bootmend.trial.Placed;
import bootmend.trial.Setting;
import bootmend.trial.Standing;
import bootmend.trial.Surroundings;
import bootmend.trial.Voltage;
import bootmend.trial.VoltageAxis;
import java.util.List;
import java.util.Optional;

/** A search among the settings that a board's limits leave, with what its trials told so far. */
final class Hunt {

    /** How likely a trial with another cooling tells nothing of this one. No source. */
    private static final double DOUBT_OF_OTHER_COOLING = 0.2;
    /** An estimate of heat as sure as this needs no further short run, in degC. No source. */
    private static final double SETTLED = 1.6;
    /** Below this a peak needs not be known well, in degC. No source. */
    private static final double FAR_FROM_HOT = 76;
    /** From here on a run is long enough for its peak to be steady, in degC. No source. */
    private static final double WARM = 70;

    private static final int MOST_SETTLING = 1;

    private final Search search;
    private final Ground ground;
    private final Limits limits;
    private final VoltageAxis axis;
    private final List<Placed> trials;
    private final List<Target> proven;

    private Hunt(
            Search search, Ground ground, Limits limits, VoltageAxis axis, List<Placed> trials, List<Target> proven) {
        this.search = search;
        this.ground = ground;
        this.limits = limits;
        this.axis = axis;
        this.trials = trials;
        this.proven = proven;
    }

    /** Empty where nothing is known of how far a search may go on this board. */
    static Optional<Hunt> of(
            String board, long start, List<Placed> all, Frontier frontier, Surroundings surroundings, Limits limits) {
        VoltageAxis axis = frontier.axis();
        Optional<SearchRange> range = SearchRange.of(board, axis);
        if (range.isEmpty()) {
            return Optional.empty();
        }
        Ground ground = Ground.of(
                start,
                range.get(),
                (clock, level) -> new Setting(clock, Voltage.of(axis, level * axis.grain())),
                setting -> limits.passed(setting).isEmpty());
        List<Placed> trials =
                all.stream().filter(trial -> trial.setting().axis() == axis).toList();
        Silicons boards = Silicons.of(range.get(), start);
        for (Placed trial : trials) {
            boolean same = trial.trial().surroundings().sameCooling(surroundings);
            Optional<Observation> seen = Observation.of(trial);
            if (seen.isPresent()) {
                boards = boards.after(same ? seen.get() : seen.get().doubted(DOUBT_OF_OTHER_COOLING));
            }
        }
        List<Target> proven = trials.stream()
                .filter(trial -> trial.trial().isKnownGood()
                        && trial.trial().surroundings().sameCooling(surroundings)
                        && frontier.contradictions().stream()
                                .noneMatch(pair -> pair.held().equals(trial))
                        && limits.passed(trial.setting()).isEmpty())
                .flatMap(trial -> ground.find(trial.setting()).stream())
                .distinct()
                .toList();
        return Optional.of(new Hunt(new Search(boards, ground), ground, limits, axis, trials, proven));
    }

    boolean isEmpty() {
        return ground.clocks() == 0;
    }

    Step next() {
        return steady(search.next(proven, unsettled(search.best())));
    }

    /** What would be next after an outcome of a step. */
    Step after(Step step, Observation.Kind kind) {
        Search later = search.after(new Observation(
                ground.clock(step.at().clock()),
                ground.grains(step.at().level()),
                kind,
                step.minutes(),
                Observation.DOUBT_OF_LOG));
        boolean proves = kind == Observation.Kind.HELD && step.kind() == Step.Kind.PROVE;
        List<Target> known = proves
                ? List.of(step.at())
                : proven.stream().filter(at -> !at.equals(step.at())).toList();
        return steady(later.next(known, Optional.empty()));
    }

    /** A warm setting runs for long enough that its peak counts. */
    private Step steady(Step step) {
        boolean warm = step.kind() == Step.Kind.SCREEN
                && step.minutes() < HeatEstimate.STEADY_MINUTES
                && limits.peak(setting(step)).filter(peak -> peak.most() > WARM).isPresent();
        return warm ? step.lasting(HeatEstimate.STEADY_MINUTES) : step;
    }

    /** What is to be kept, where its heat is close to the limit and not yet known well. */
    private Optional<Target> unsettled(Target at) {
        Setting setting = ground.setting(at.clock(), at.level());
        long settling = trials.stream()
                .filter(trial -> trial.setting().equals(setting) && trial.is(Standing.Kind.HELD))
                .count();
        return limits.peak(setting)
                .filter(peak -> peak.most() > FAR_FROM_HOT && peak.uncertainty() > SETTLED && settling < MOST_SETTLING)
                .map(peak -> at);
    }

    Setting setting(Step step) {
        return setting(step.at());
    }

    Setting setting(Target at) {
        return ground.setting(at.clock(), at.level());
    }

    /** Why the next clock above and the next voltage above are not free, where they are not. */
    List<String> stops(Target at) {
        Setting faster = ground.setting(at.clock() + 1, at.level());
        return limits.passed(faster).stream().toList();
    }

    Chances chances() {
        return new Chances((clock, amount) -> search.holds(clock, amount / axis.grain(), Stability.MINUTES));
    }
}
