package bootmend.gui.model;

import bootmend.finding.Finding;
import bootmend.finding.Fix;
import java.util.List;

/**
 * What a look for damage found, and what a repair would do about each.
 *
 * @param findings in the order they were found, at most {@value #MOST}
 * @param unshown how many more there are
 */
public record DamageReport(List<Finding> findings, int unshown) {

    /** A card that is damaged through and through has more of them than anyone reads. */
    static final int MOST = 60;

    private static final String LOST = "lost-clusters";

    public DamageReport {
        findings = List.copyOf(findings);
    }

    /** @param all what a repair that frees nothing found */
    public static DamageReport of(List<Finding> all) {
        return new DamageReport(all.stream().limit(MOST).toList(), Math.max(0, all.size() - MOST));
    }

    /** Whether a repair may repair it, once it is told that it may free clusters that belong to no file. */
    public static boolean isAsked(Finding finding) {
        return finding.id().equals(LOST) && finding.fix() == Fix.DECISION;
    }

    private static boolean isLeft(Finding finding) {
        return !finding.isRepaired() && !isAsked(finding);
    }

    /** Whether nothing is wrong. */
    public boolean isSound() {
        return findings.isEmpty();
    }

    /** Whether there is something for a repair to do, at least once it is told that it may. */
    public boolean canRepair() {
        return findings.stream().anyMatch(finding -> !isLeft(finding));
    }

    /** Whether something is left alone whatever is chosen. */
    public boolean leaves() {
        return findings.stream().anyMatch(DamageReport::isLeft);
    }

    /** Whether clusters were found that belong to no file. */
    public boolean hasLost() {
        return findings.stream().anyMatch(DamageReport::isAsked);
    }
}
