package bootmend.finding;

import bootmend.NextStep;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One kind of thing that can be found on a card.
 *
 * @param id lower-case words joined by hyphens, the same in every version
 * @param severities how heavy it is for each purpose, at least for one; a purpose that it does not matter for is left out
 * @param fix what repairs it as a rule
 * @param meaning what it means, in whole sentences
 * @param remedy what to do, in whole sentences; holds no command
 * @param steps what to do after that; may be empty
 * @param source where the meaning is published, or that it is not
 */
public record Rule(
        String id,
        Map<Purpose, Severity> severities,
        Fix fix,
        String meaning,
        String remedy,
        List<NextStep> steps,
        String source) {

    private static final String UNPUBLISHED = "common practice, no source";

    public Rule {
        if (severities.isEmpty()) {
            throw new IllegalArgumentException(id + " matters for no purpose");
        }
        severities = Map.copyOf(severities);
        steps = List.copyOf(steps);
    }

    /** A rule whose meaning is not published and whose remedy is what {@code fix} says. */
    public static Rule of(String id, Map<Purpose, Severity> severities, Fix fix, String meaning) {
        return new Rule(id, severities, fix, meaning, fix.words(), List.of(), UNPUBLISHED);
    }

    /** What weighs the same for every purpose. */
    public static Map<Purpose, Severity> always(Severity severity) {
        Map<Purpose, Severity> severities = new EnumMap<>(Purpose.class);
        for (Purpose purpose : Purpose.values()) {
            severities.put(purpose, severity);
        }
        return severities;
    }

    public Optional<Severity> severity(Purpose purpose) {
        return Optional.ofNullable(severities.get(purpose));
    }

    /** The heaviest of its severities. */
    public Severity heaviest() {
        return severities.values().stream().min(Severity::compareTo).orElseThrow();
    }

    /** The same as far as it matters for {@code purpose}; empty where it does not. */
    public Optional<Rule> onlyFor(Purpose purpose) {
        return severity(purpose).map(only -> new Rule(id, Map.of(purpose, only), fix, meaning, remedy, steps, source));
    }

    /** The same with other steps. */
    public Rule withSteps(List<NextStep> others) {
        return new Rule(id, severities, fix, meaning, remedy, others, source);
    }
}
