package bootmend.view;

import java.util.List;

/**
 * What a rule of {@code bootmend check} is.
 *
 * @param rule its id
 * @param severities how severe a finding is for each purpose, each a phrase such as {@code ship: blocker}
 * @param meaning what a finding means, whole sentences
 * @param remedy what to do, whole sentences
 * @param source where it is published, or that it is not
 */
public record RuleExplanation(String rule, List<String> severities, String meaning, String remedy, String source)
        implements Explanation {

    public RuleExplanation {
        severities = List.copyOf(severities);
    }
}
