package bootmend.trial;

import java.time.Instant;
import java.util.Map;
import java.util.Objects;

/**
 * One try of one setting on one board, with its outcome.
 *
 * @param id its name in the store; empty for one that is not stored yet
 * @param when when it ended
 * @param unit the board
 * @param settings numbers of tuning keys as they were in force, by key; a key that is not there was at stock
 * @param outcome how it ended
 * @param run what was measured
 * @param scores results by name of the measuring program; higher is better, above 0
 * @param surroundings cooling, supply, ambient temperature
 * @param grounds what all that rests on
 * @param notes more to know, possibly empty; at most 4000 characters
 */
public record Trial(
        String id,
        Instant when,
        Unit unit,
        Map<String, Long> settings,
        Outcome outcome,
        Run run,
        Map<String, Double> scores,
        Surroundings surroundings,
        Grounds grounds,
        String notes) {

    /** One of which nothing but a user's word is known. */
    public Trial(
            String id,
            Instant when,
            Unit unit,
            Map<String, Long> settings,
            Outcome outcome,
            Run run,
            Map<String, Double> scores,
            Surroundings surroundings,
            String notes) {
        this(id, when, unit, settings, outcome, run, scores, surroundings, Grounds.TOLD, notes);
    }

    /** @throws IllegalArgumentException with a sentence, if something cannot be so */
    public Trial {
        Objects.requireNonNull(id);
        Objects.requireNonNull(when);
        Objects.requireNonNull(unit);
        Objects.requireNonNull(outcome);
        Objects.requireNonNull(run);
        Objects.requireNonNull(surroundings);
        Objects.requireNonNull(grounds);
        settings = TextLimits.map("settings", settings);
        scores = TextLimits.map("scores", scores);
        scores.forEach(Trial::checkScore);
        notes = TextLimits.notes(notes);
    }

    static void checkScore(String name, double value) {
        TextLimits.name("score's name", name, TextLimits.MAX_LABEL);
        if (Quantity.SCORE.check(value) == 0) {
            throw new IllegalArgumentException("the score " + name + " should be above 0");
        }
    }

    /** What it counts for. */
    public Standing standing() {
        return Standing.of(this);
    }

    /**
     * Whether it backs a known-good profile: it held for at least {@value Standing#KNOWN_GOOD_MINUTES} minutes under full
     * load, and the throttle mask was read and had no bit.
     */
    public boolean isKnownGood() {
        return standing().is(Standing.Kind.HELD) && Standing.isLong(run);
    }

    Trial withId(String name) {
        return new Trial(name, when, unit, settings, outcome, run, scores, surroundings, grounds, notes);
    }
}
