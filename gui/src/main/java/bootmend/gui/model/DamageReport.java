package bootmend.gui.model;

import bootmend.operation.FindingView;
import java.util.List;

/**
 * What a look for damage found, and what a repair would do about each.
 *
 * @param findings in the order they were found, at most {@value #MOST}
 * @param unshown how many more there are
 */
public record DamageReport(List<Row> findings, int unshown) {

    /** A card that is damaged through and through has more of them than anyone reads. */
    static final int MOST = 60;

    private static final String LOST = "lost-clusters";

    /** What becomes of one thing that is wrong. */
    public enum Fate {
        /** A repair mends it without guessing. */
        MENDED,
        /** A repair may mend it, once it is told that it may free clusters that belong to no file. */
        ASKED,
        /** Mending it would be guessing. */
        LEFT
    }

    /** One thing that is wrong. */
    public record Row(String where, String what, Fate fate) {}

    public DamageReport {
        findings = List.copyOf(findings);
    }

    /** @param all what a repair that frees nothing found */
    public static DamageReport of(List<FindingView> all) {
        return new DamageReport(
                all.stream().limit(MOST).map(DamageReport::row).toList(), Math.max(0, all.size() - MOST));
    }

    private static Row row(FindingView finding) {
        return new Row(
                finding.where(),
                finding.what(),
                finding.mended() ? Fate.MENDED : finding.id().equals(LOST) ? Fate.ASKED : Fate.LEFT);
    }

    /** Whether nothing is wrong. */
    public boolean isSound() {
        return findings.isEmpty();
    }

    /** Whether there is something for a repair to do, at least once it is told that it may. */
    public boolean canMend() {
        return findings.stream().anyMatch(row -> row.fate() != Fate.LEFT);
    }

    /** Whether something is left alone whatever is chosen. */
    public boolean leaves() {
        return findings.stream().anyMatch(row -> row.fate() == Fate.LEFT);
    }

    /** Whether clusters were found that belong to no file. */
    public boolean hasLost() {
        return findings.stream().anyMatch(row -> row.fate() == Fate.ASKED);
    }
}
