package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.trial.Grounds;
import bootmend.trial.LogSummary;
import bootmend.trial.Outcome;
import bootmend.trial.Run;
import bootmend.trial.Surroundings;
import bootmend.trial.Trial;
import bootmend.workplace.Workplace;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;

/** Corrects a trial that is kept, deletes trials, and puts deleted ones back. */
public final class TrialEditJob {

    private final Workplace workplace;
    private final TrialEvidence evidence;

    public TrialEditJob(Workplace workplace) {
        this.workplace = workplace;
        this.evidence = new TrialEvidence(workplace.tables());
    }

    /** @throws CardException if there is no such trial, what is told makes no sense, or the log contradicts it */
    public TrialAdded edit(String id, TrialEdit edit) throws CardException {
        try {
            return edited(workplace.trials().find(id), edit);
        } catch (IllegalArgumentException e) {
            throw CardException.usage(e.getMessage(), "", NextStep.Plain.GIVE_TRIAL_DETAILS);
        }
    }

    /** Puts trials aside; each that is deleted stays so, whatever happens to those after it. */
    public void delete(List<String> ids) throws CardException {
        for (String id : ids) {
            workplace.trials().delete(id);
        }
    }

    /** Puts deleted trials back. */
    public void restore(List<String> ids) throws CardException {
        for (String id : ids) {
            workplace.trials().restore(id);
        }
    }

    private TrialAdded edited(Trial before, TrialEdit edit) throws CardException {
        Trial told = told(before, edit);
        Optional<LogSummary> log = evidence.log(told, edit.log());
        Grounds grounds = log.isEmpty()
                ? told.grounds()
                : evidence.grounds(told, log.get(), told.grounds().settings(), edit.despite());
        Trial after = TrialEvidence.with(
                told, log.map(read -> filled(told.run(), edit, read)).orElse(told.run()), grounds);
        workplace.trials().replace(after);
        return new TrialAdded(
                after,
                workplace.trials().file(after).toString(),
                log,
                evidence.notes(after, log, new TrialSettings(workplace).outOfRange(after.settings())));
    }

    private Trial told(Trial before, TrialEdit edit) throws CardException {
        Surroundings around = before.surroundings();
        return new Trial(
                before.id(),
                before.when(),
                before.unit(),
                settings(before, edit),
                edit.outcome().isEmpty()
                        ? before.outcome()
                        : Outcome.of(edit.outcome().get())
                                .orElseThrow(() -> CardException.usage(
                                        edit.outcome().get() + " is no outcome",
                                        "Say boots, no-boot, locks-up, misbehaves, throttles or holds.")),
                run(before.run(), edit),
                scores(before, edit),
                new Surroundings(
                        edit.cooling().orElse(around.cooling()),
                        edit.supply().orElse(around.supply()),
                        edit.ambient().isPresent() ? edit.ambient() : around.ambient()),
                edit.settings().isEmpty()
                        ? before.grounds()
                        : new Grounds(
                                "", before.grounds().log(), before.grounds().contradictions()),
                edit.notes().orElse(before.notes()));
    }

    /** Settings that are corrected by hand are no longer those of the file they were read from. */
    private Map<String, Long> settings(Trial before, TrialEdit edit) throws CardException {
        Map<String, Long> settings = new TreeMap<>(before.settings());
        for (String text : edit.settings()) {
            if (text.strip().endsWith("=")) {
                settings.remove(
                        text.strip().substring(0, text.strip().length() - 1).strip());
            } else {
                settings.putAll(new TrialSettings(workplace).named(List.of(text)));
            }
        }
        return settings;
    }

    private static Run run(Run before, TrialEdit edit) throws CardException {
        OptionalLong mask = edit.mask().isEmpty()
                ? before.mask()
                : TrialEvidence.mask(edit.mask().get());
        return new Run(
                first(edit.minutes(), before.minutes()),
                edit.fullLoad().orElse(before.fullLoad()),
                first(edit.peak(), before.peak()),
                first(edit.clock(), before.clock()),
                before.volts(),
                mask);
    }

    /** What a log tells, but for what is told now. */
    private static Run filled(Run told, TrialEdit edit, LogSummary log) {
        return new Run(
                edit.minutes().isPresent() ? edit.minutes() : first(log.minutesAtFullClock(), told.minutes()),
                told.fullLoad(),
                edit.peak().isPresent() ? edit.peak() : first(log.peak(), told.peak()),
                edit.clock().isPresent() ? edit.clock() : first(log.meanClock(), told.clock()),
                first(log.meanVolts(), told.volts()),
                edit.mask().isPresent() || log.mask().isEmpty() ? told.mask() : log.mask());
    }

    private static Map<String, Double> scores(Trial before, TrialEdit edit) throws CardException {
        Map<String, Double> scores = new TreeMap<>(before.scores());
        scores.putAll(TrialEvidence.scores(edit.scores()));
        return scores;
    }

    private static OptionalDouble first(OptionalDouble one, OptionalDouble other) {
        return one.isPresent() ? one : other;
    }
}
