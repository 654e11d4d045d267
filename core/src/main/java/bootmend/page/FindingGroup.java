package bootmend.page;

import bootmend.finding.Finding;
import bootmend.finding.Severity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The findings of one rule on one card, of which meaning, remedy and source need telling only once.
 *
 * @param findings at least one
 */
public record FindingGroup(List<Finding> findings) {

    public FindingGroup {
        findings = List.copyOf(findings);
    }

    /** By the rules, in the order of each one's first finding. */
    public static List<FindingGroup> of(List<Finding> findings) {
        Map<String, List<Finding>> byRule =
                findings.stream().collect(Collectors.groupingBy(Finding::id, LinkedHashMap::new, Collectors.toList()));
        return byRule.values().stream().map(FindingGroup::new).toList();
    }

    private Finding first() {
        return findings.get(0);
    }

    public String rule() {
        return first().id();
    }

    public Severity severity() {
        return first().severity();
    }

    public String meaning() {
        return first().rule().meaning();
    }

    public String remedy() {
        return first().rule().remedy();
    }

    public String source() {
        return first().rule().source();
    }
}
