package bootmend.view;

import bootmend.NextStep;
import java.util.List;

/**
 * What a rule of the check is.
 *
 * @param rule its id
 * @param severities how severe a finding is for each purpose, each a phrase such as {@code ship: blocker}
 * @param meaning what a finding means, whole sentences
 * @param remedy what to do, whole sentences that hold no command
 * @param steps what to do after that; may be empty
 * @param source where it is published, or that it is not
 */
public record RuleExplanation(
        String rule, List<String> severities, String meaning, String remedy, List<NextStep> steps, String source)
        implements Explanation {

    public RuleExplanation {
        severities = List.copyOf(severities);
        steps = List.copyOf(steps);
    }
}
