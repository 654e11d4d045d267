package bootmend.check;

import bootmend.NextStep;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One row of the rules' data file.
 *
 * @param id lower-case words joined by hyphens, the same in every version
 * @param severities how heavy it is for each purpose; a purpose that it does not matter for is left out
 * @param meaning what it means, in whole sentences
 * @param remedy what to do, in whole sentences; holds no command
 * @param steps what to do after that; may be empty
 * @param source where the meaning is published, or that it is not
 */
public record Rule(
        String id,
        Map<Purpose, Severity> severities,
        String meaning,
        String remedy,
        List<NextStep> steps,
        String source) {

    public Rule {
        severities = Map.copyOf(severities);
        steps = List.copyOf(steps);
    }

    public Optional<Severity> severity(Purpose purpose) {
        return Optional.ofNullable(severities.get(purpose));
    }

    Rule withSteps(List<NextStep> others) {
        return new Rule(id, severities, meaning, remedy, others, source);
    }
}
