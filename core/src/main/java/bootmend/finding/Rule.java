package bootmend.finding;

import java.util.Map;
import java.util.Optional;

/**
 * One row of the rules' data file.
 *
 * @param id lower-case words joined by hyphens, the same in every version
 * @param severities how heavy it is for each purpose; a purpose that it does not matter for is left out
 * @param meaning what it means, in whole sentences
 * @param remedy what to do, in whole sentences
 * @param source where the meaning is published, or that it is not
 */
public record Rule(String id, Map<Purpose, Severity> severities, String meaning, String remedy, String source) {

    public Rule {
        severities = Map.copyOf(severities);
    }

    public Optional<Severity> severity(Purpose purpose) {
        return Optional.ofNullable(severities.get(purpose));
    }
}
