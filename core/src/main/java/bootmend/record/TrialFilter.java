package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.trial.Outcome;
import bootmend.trial.Trial;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Which trials are wanted, as a user says it; what is empty wants all.
 *
 * @param label of one board
 * @param board its kind, such as {@code pi4}
 * @param outcome one of the words of {@link Outcome}
 * @param counts what it counts as: {@code known-good}, {@code held}, {@code failed}, {@code throttled} or {@code undecided}
 * @param settings each {@code KEY=NUMBER}, all of which were in force
 * @param cooling a part of its words, in any case
 * @param since a day such as {@code 2026-11-24} or a moment such as {@code 2026-11-24T15:30:00Z}
 * @param until the same; that day is in
 * @param newest only so many, the newest
 */
public record TrialFilter(
        Optional<String> label,
        Optional<String> board,
        Optional<String> outcome,
        Optional<String> counts,
        List<String> settings,
        Optional<String> cooling,
        Optional<String> since,
        Optional<String> until,
        Optional<Integer> newest) {

    private static final List<String> COUNTS = List.of("known-good", "held", "failed", "throttled", "undecided");

    /** Wants all. */
    public static final TrialFilter ALL = ofLabel(Optional.empty());

    public TrialFilter {
        settings = List.copyOf(settings);
    }

    /** Wants all of one board. */
    public static TrialFilter ofLabel(Optional<String> label) {
        return new TrialFilter(
                label,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** What a trial counts as, in one word. */
    public static String counts(Trial trial) {
        return trial.isKnownGood()
                ? COUNTS.get(0)
                : trial.standing().kind().name().toLowerCase(Locale.ROOT);
    }

    /** @throws CardException if something is said in a way that cannot be meant */
    Predicate<Trial> wanted(Map<String, Long> named, ZoneId zone) throws CardException {
        Optional<Outcome> ended = outcome.isEmpty() ? Optional.empty() : Optional.of(outcome(outcome.get()));
        if (counts.isPresent() && !COUNTS.contains(counts.get())) {
            throw CardException.usage(
                    "no trial counts as " + counts.get(), "Say one of " + String.join(", ", COUNTS) + ".");
        }
        if (newest.isPresent() && newest.get() < 1) {
            throw CardException.usage("the newest " + newest.get() + " are no trials", "Say 1 or more.");
        }
        Instant from = since.isEmpty() ? Instant.MIN : moment(since.get(), zone, 0);
        Instant to = until.isEmpty() ? Instant.MAX : moment(until.get(), zone, 1);
        return trial -> board.filter(id -> !id.equals(trial.unit().board())).isEmpty()
                && ended.filter(how -> how != trial.outcome()).isEmpty()
                && counts.filter(word -> !word.equals(counts(trial))).isEmpty()
                && named.entrySet().stream()
                        .allMatch(setting ->
                                setting.getValue().equals(trial.settings().get(setting.getKey())))
                && cooling.filter(words -> !trial.surroundings()
                                .cooling()
                                .toLowerCase(Locale.ROOT)
                                .contains(words.toLowerCase(Locale.ROOT)))
                        .isEmpty()
                && !trial.when().isBefore(from)
                && trial.when().isBefore(to);
    }

    private static Outcome outcome(String word) throws CardException {
        return Outcome.of(word)
                .orElseThrow(() -> CardException.usage(
                        word + " is no outcome", "Say boots, no-boot, locks-up, misbehaves, throttles or holds."));
    }

    private static Instant moment(String text, ZoneId zone, int days) throws CardException {
        try {
            return text.contains("T")
                    ? Instant.parse(text)
                    : LocalDate.parse(text).plusDays(days).atStartOfDay(zone).toInstant();
        } catch (DateTimeException e) {
            throw CardException.usage(
                    text + " is no day",
                    "Write it like 2026-11-24, or 2026-11-24T15:30:00Z.",
                    NextStep.Plain.LIST_TRIALS);
        }
    }
}
