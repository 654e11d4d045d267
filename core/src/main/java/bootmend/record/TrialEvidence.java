package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.trial.Grounds;
import bootmend.trial.LogChecks;
import bootmend.trial.LogSummary;
import bootmend.trial.Outcome;
import bootmend.trial.Placement;
import bootmend.trial.Run;
import bootmend.trial.ThrottleMask;
import bootmend.trial.Trial;
import bootmend.tuning.TuningTables;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;

/** Holds what a user tells of a trial against the board's log. */
final class TrialEvidence {

    private final TuningTables tables;

    TrialEvidence(TuningTables tables) {
        this.tables = tables;
    }

    /** The log, summed up at the clock that the trial was to run at. */
    Optional<LogSummary> log(Trial told, Optional<Path> file) throws CardException {
        if (file.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble clock = Placement.of(List.of(told), tables).placed().stream()
                .mapToDouble(placed -> placed.setting().clock())
                .findFirst();
        return Optional.of(LogSummary.read(file.get(), clock, tables.throttleBits()));
    }

    /**
     * What the trial rests on with its log.
     *
     * @param despite whether a contradiction is kept with it, rather than refused
     */
    Grounds grounds(Trial told, LogSummary log, String settings, boolean despite) throws CardException {
        List<String> contradictions = Placement.of(List.of(told), tables).placed().stream()
                .flatMap(placed -> LogChecks.contradictions(placed, log, tables).stream())
                .toList();
        if (!contradictions.isEmpty() && !despite) {
            throw CardException.refused(
                    "the log contradicts the trial: " + String.join("; ", contradictions),
                    "Correct what was told, or name the log of this trial.",
                    NextStep.Allow.CONTRADICTED);
        }
        return new Grounds(settings, log.sha256(), contradictions);
    }

    static Trial with(Trial told, Run run, Grounds grounds) {
        return new Trial(
                told.id(),
                told.when(),
                told.unit(),
                told.settings(),
                told.outcome(),
                run,
                told.scores(),
                told.surroundings(),
                grounds,
                told.notes());
    }

    /** Sentences on what is worth knowing about a trial that is kept. */
    List<String> notes(Trial trial, Optional<LogSummary> log, List<String> outOfRange) {
        List<String> notes = new ArrayList<>(outOfRange);
        if (log.filter(LogSummary::bitsBefore).isPresent()) {
            notes.add(
                    "The throttle bits stood in the log's first row already, so that they came before it; start the board "
                            + "anew before a run.");
        }
        notes.addAll(Placement.of(List.of(trial), tables).aside());
        if (trial.outcome() == Outcome.HOLDS && !trial.isKnownGood()) {
            notes.add("It is not known-good: " + trial.standing().why() + ".");
        }
        return notes;
    }

    static OptionalLong mask(String text) throws CardException {
        OptionalLong mask = ThrottleMask.parse(text);
        if (mask.isEmpty()) {
            throw CardException.usage(
                    text + " is no throttle mask", "Write it as the board reports it, such as 0x50000.");
        }
        return mask;
    }

    static Map<String, Double> scores(List<String> texts) throws CardException {
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
}
