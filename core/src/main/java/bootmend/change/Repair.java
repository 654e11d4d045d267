package bootmend.change;

import bootmend.finding.Finding;
import java.util.List;

/**
 * What is wrong with a card and the plan that repairs what can be repaired.
 *
 * @param plan empty where there is nothing to repair, or nothing that can be
 */
public record Repair(Plan plan, List<Finding> findings) {

    public Repair {
        findings = List.copyOf(findings);
    }
}
