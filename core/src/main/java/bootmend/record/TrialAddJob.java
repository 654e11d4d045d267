package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.request.RequestedBoard;
import bootmend.trial.Grounds;
import bootmend.trial.LogSummary;
import bootmend.trial.Outcome;
import bootmend.trial.Run;
import bootmend.trial.Surroundings;
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
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** Keeps a trial. */
public final class TrialAddJob {

    private final Workplace workplace;
    private final TuningTables tables;
    private final TrialEvidence evidence;

    public TrialAddJob(Workplace workplace) {
        this.workplace = workplace;
        this.tables = workplace.tables();
        this.evidence = new TrialEvidence(tables);
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
        TrialSettings.Ran ran = settings.of(request, facts);
        Trial told = new Trial(
                "",
                when(request),
                unit,
                ran.settings(),
                outcome,
                measured(request.measured(), Optional.empty()),
                TrialEvidence.scores(request.measured().scores()),
                new Surroundings(request.cooling(), request.supply(), request.ambient()),
                new Grounds(ran.file(), "", List.of()),
                request.notes());
        Optional<LogSummary> log = evidence.log(told, request.log());
        Grounds grounds =
                log.isEmpty() ? told.grounds() : evidence.grounds(told, log.get(), ran.file(), request.despite());
        Trial kept = workplace.trials().add(TrialEvidence.with(told, measured(request.measured(), log), grounds));
        List<String> notes = new ArrayList<>(ran.notes());
        notes.addAll(evidence.notes(kept, log, settings.outOfRange(ran.settings())));
        return new TrialAdded(kept, workplace.trials().file(kept).toString(), log, notes);
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

    private static Run measured(TrialRequest.Measured told, Optional<LogSummary> log) throws CardException {
        OptionalLong mask = told.mask().isEmpty()
                ? log.map(LogSummary::mask).orElse(OptionalLong.empty())
                : TrialEvidence.mask(told.mask().get());
        return new Run(
                first(told.minutes(), log.map(LogSummary::minutesAtFullClock)),
                told.fullLoad(),
                first(told.peak(), log.map(LogSummary::peak)),
                first(told.clock(), log.map(LogSummary::meanClock)),
                log.map(LogSummary::meanVolts).orElse(OptionalDouble.empty()),
                mask);
    }

    private static OptionalDouble first(OptionalDouble told, Optional<OptionalDouble> logged) {
        return told.isPresent() ? told : logged.orElse(OptionalDouble.empty());
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
}
