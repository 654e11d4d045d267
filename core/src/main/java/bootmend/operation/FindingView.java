package bootmend.operation;

import bootmend.change.RepairFinding;

/**
 * One thing that is wrong with a card, as a user is shown it.
 *
 * @param id lower-case words joined by hyphens, the same in every version
 * @param where a path, or a sector or region by name
 * @param what a clause on what was found, and one on what follows from it
 * @param mended whether the repair mends it
 */
public record FindingView(String id, String where, String what, boolean mended) {

    static FindingView of(RepairFinding finding) {
        return new FindingView(finding.id(), finding.where(), finding.what(), finding.mended());
    }
}
