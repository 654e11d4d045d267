package bootmend.cli;

import bootmend.check.Finding;
import bootmend.check.Severity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The findings of one rule on one card, of which meaning, remedy and source need telling only once. */
record FindingGroup(List<Finding> findings) {

    /** In the findings' order. */
    static List<FindingGroup> of(List<Finding> findings) {
        Map<String, List<Finding>> byRule = findings.stream()
                .collect(Collectors.groupingBy(Finding::rule, LinkedHashMap::new, Collectors.toList()));
        return byRule.values().stream().map(FindingGroup::new).toList();
    }

    private Finding first() {
        return findings.get(0);
    }

    String rule() {
        return first().rule();
    }

    Severity severity() {
        return first().severity();
    }

    String meaning() {
        return first().meaning();
    }

    String remedy() {
        return first().remedy();
    }

    String source() {
        return first().source();
    }
}
