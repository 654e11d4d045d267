package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.request.RequestedBoard;
import bootmend.trial.LogSummary;
import bootmend.trial.Outcome;
import bootmend.trial.Placement;
import bootmend.trial.Run;
import bootmend.trial.Surroundings;
import bootmend.trial.ThrottleMask;
import bootmend.trial.Trial;
import bootmend.trial.Unit;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;

/** Keeps a trial. */
public final class TrialAddJob {

    private final Workplace workplace;
    private final TuningTables tables;

    public TrialAddJob(Workplace workplace) {
        this.workplace = workplace;
        this.tables = workplace.tables();
    }

    /** @throws CardException if what is told makes no sense, the card or the log cannot be read, or there is no room */
    public TrialAdded run(TrialRequest request) throws CardException {
        try {
            return add(request);
        } catch (IllegalArgumentException e) {
            throw CardException.usage(e.getMessage(), "", NextStep.Plain.GIVE_TRIAL_DETAILS);
        }
    }

    private TrialAdded add(TrialRequest request) throws CardException {
        Outcome outcome = Outcome.of(request.outcome())
                .orElseThrow(() -> CardException.usage(
                        request.outcome() + " is no outcome",
                        "Say boots, no-boot, locks-up, misbehaves, throttles or holds."));
        BoardFacts facts = facts(request);
        Unit unit = new Unit(facts.board().orElseThrow().id(), request.label());
        TrialSettings settings = new TrialSettings(workplace);
        Map<String, Long> inForce = settings.of(request, facts);
        Trial untimed = new Trial(
                "",
                when(request),
                unit,
                inForce,
                outcome,
                Run.UNMEASURED,
                scores(request.measured().scores()),
                new Surroundings(request.cooling(), request.supply(), request.ambient()),
                request.notes());
        Optional<LogSummary> log = request.log().isEmpty()
                ? Optional.empty()
                : Optional.of(LogSummary.read(request.log().get(), setClock(untimed), tables.throttleBits()));
        Trial trial = new Trial(
                "",
                untimed.when(),
                unit,
                inForce,
                outcome,
                measured(request.measured(), log),
                untimed.scores(),
                untimed.surroundings(),
                untimed.notes());
        Trial kept = workplace.trials().add(trial);
        return new TrialAdded(
                kept, workplace.trials().file(kept).toString(), log, notes(kept, settings.outOfRange(inForce)));
    }

    /** What is said about the board, with the kind of board that earlier trials of this label name. */
    private BoardFacts facts(TrialRequest request) throws CardException {
        BoardFacts told = new RequestedBoard(tables).facts(request.board());
        List<Trial> earlier = workplace.trials().read().trials().stream()
                .filter(trial -> trial.unit().label().equals(request.label().strip()))
                .toList();
        if (earlier.isEmpty()) {
            if (told.board().isEmpty()) {
                throw CardException.usage(
                        "which kind of board " + request.label() + " is was not said",
                        "Later trials with this label need it no more.",
                        NextStep.Plain.GIVE_BOARD);
            }
            return told;
        }
        String known = earlier.get(0).unit().board();
        if (told.board().map(Board::id).filter(id -> !id.equals(known)).isPresent()) {
            throw CardException.usage(
                    request.label() + " is a " + known + " in earlier trials, not a "
                            + told.board().get().id(),
                    "A label is for one physical board; give this one a label of its own.");
        }
        return told.withBoard(tables.boards().find(known).orElseThrow());
    }

    private OptionalDouble setClock(Trial trial) {
        return Placement.of(List.of(trial), tables).placed().stream()
                .mapToDouble(placed -> placed.setting().clock())
                .findFirst();
    }

    private static Run measured(TrialRequest.Measured told, Optional<LogSummary> log) throws CardException {
        OptionalLong mask = told.mask().isEmpty()
                ? log.map(LogSummary::mask).orElse(OptionalLong.empty())
                : mask(told.mask().get());
        return new Run(
                first(told.minutes(), log.map(LogSummary::minutesAtFullClock)),
                told.fullLoad(),
                first(told.peak(), log.map(LogSummary::peak)),
                first(told.clock(), log.map(LogSummary::meanClock)),
                mask);
    }

    private static OptionalDouble first(OptionalDouble told, Optional<OptionalDouble> logged) {
        return told.isPresent() ? told : logged.orElse(OptionalDouble.empty());
    }

    private static OptionalLong mask(String text) throws CardException {
        OptionalLong mask = ThrottleMask.parse(text);
        if (mask.isEmpty()) {
            throw CardException.usage(
                    text + " is no throttle mask", "Write it as the board reports it, such as 0x50000.");
        }
        return mask;
    }

    private static Map<String, Double> scores(List<String> texts) throws CardException {
        Map<String, Double> scores = new TreeMap<>();
        for (String text : texts) {
            int sign = text.lastIndexOf('=');
            try {
                scores.put(
                        text.substring(0, Math.max(0, sign)).strip(),
                        Double.valueOf(text.substring(sign + 1).strip()));
            } catch (NumberFormatException e) {
                throw CardException.usage(text + " is no score", "Write it like \"one core=312\"; higher is better.");
            }
        }
        return scores;
    }

    private Instant when(TrialRequest request) throws CardException {
        if (request.when().isEmpty()) {
            return workplace.instant();
        }
        try {
            return Instant.parse(request.when().get());
        } catch (DateTimeParseException e) {
            throw CardException.usage(request.when().get() + " is no time", "Write it like 2026-11-24T15:30:00Z.");
        }
    }

    private List<String> notes(Trial trial, List<String> outOfRange) {
        List<String> notes = new ArrayList<>(outOfRange);
        notes.addAll(Placement.of(List.of(trial), tables).aside());
        if (trial.outcome() == Outcome.HOLDS && !trial.isKnownGood()) {
            notes.add("It is not known-good: " + trial.verdict().why() + ".");
        }
        return notes;
    }
}
