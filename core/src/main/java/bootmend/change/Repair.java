package bootmend.change;

import java.util.List;

/**
 * What is wrong with a card and the plan that mends what can be mended.
 *
 * @param plan empty where there is nothing to mend, or nothing that can be
 */
public record Repair(Plan plan, List<RepairFinding> findings) {

    public Repair {
        findings = List.copyOf(findings);
    }
}
