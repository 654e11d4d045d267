package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.trial.Gain;
import bootmend.trial.Placed;
import bootmend.trial.Placement;
import bootmend.trial.Quantity;
import bootmend.trial.StepLimits;
import bootmend.trial.Surroundings;
import bootmend.trial.Trial;
import bootmend.trial.search.Adviser;
import bootmend.tuning.TuningTables;
import bootmend.view.CautionView;
import bootmend.workplace.Workplace;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;

/** Works out what a board's trials come to, and what to try next. */
public final class TrialAdviseJob {

    /** Keys that make the axes of the frontier; any other that differs is worth a note. */
    private static final Set<String> AXES = Set.of("arm_freq", "over_voltage", "over_voltage_delta");

    private final Workplace workplace;
    private final TuningTables tables;

    public TrialAdviseJob(Workplace workplace) {
        this.workplace = workplace;
        this.tables = workplace.tables();
    }

    /**
     * @param label the board's
     * @param ambient as the next trial will have it, in degC; where empty, as the latest trial that tells it had
     * @throws CardException if there is no such board, or some trial's file cannot be read
     */
    public TrialReport run(String label, OptionalDouble ambient) throws CardException {
        return run(TrialSide.of(label), ambient);
    }

    /**
     * The same, from the trials under one cooling where one is named.
     *
     * @throws CardException if there is no such board, it had no trial under that cooling, or some file cannot be read
     */
    public TrialReport run(TrialSide side, OptionalDouble ambient) throws CardException {
        LabelledTrials board = LabelledTrials.of(workplace.trials().read().whole(), side.label())
                .under(side.cooling());
        Placement placement = Placement.of(board.trials(), tables);
        Surroundings next = surroundings(board.trials(), ambient);
        List<Placed> placed = placement.placed();
        Adviser adviser = new Adviser(board.unit().board(), placed, next, tables);
        List<String> notes = new ArrayList<>(placement.aside());
        notes.addAll(mixed(placed));
        ModeComparison.of(placed).ifPresent(notes::add);
        return new TrialReport(
                board.unit(),
                placed,
                ModeComparison.frontiers(placed, adviser.axis()),
                adviser.advise(),
                adviser.chances(),
                StepLimits.of(tables),
                Gain.of(placed, stockClock(board)),
                notes,
                CautionView.ofTuning(tables));
    }

    private static Surroundings surroundings(List<Trial> trials, OptionalDouble told) throws CardException {
        try {
            told.ifPresent(Quantity.AMBIENT::check);
        } catch (IllegalArgumentException e) {
            throw CardException.usage(e.getMessage(), "", NextStep.Plain.GIVE_AMBIENT);
        }
        List<Trial> newestFirst = new ArrayList<>(trials);
        Collections.reverse(newestFirst);
        OptionalDouble ambient = told.isPresent()
                ? told
                : newestFirst.stream()
                        .flatMapToDouble(trial -> trial.surroundings().ambient().stream())
                        .findFirst();
        Surroundings latest = newestFirst.get(0).surroundings();
        return new Surroundings(latest.cooling(), latest.supply(), ambient);
    }

    private OptionalLong stockClock(LabelledTrials board) {
        return Placement.stockClock(board.unit().board(), tables);
    }

    /** Trials that differ in more than clock and voltage step were not quite the same try. */
    private static List<String> mixed(List<Placed> placed) {
        Set<String> keys = placed.stream()
                .flatMap(each -> each.trial().settings().keySet().stream())
                .filter(key -> !AXES.contains(key))
                .filter(key -> placed.stream()
                                .map(each -> each.trial().settings().getOrDefault(key, Long.MIN_VALUE))
                                .distinct()
                                .count()
                        > 1)
                .collect(Collectors.toSet());
        return keys.isEmpty()
                ? List.of()
                : List.of("These trials differ in more than clock and voltage ("
                        + String.join(", ", keys.stream().sorted().toList()) + "); they are counted together anyway.");
    }
}
