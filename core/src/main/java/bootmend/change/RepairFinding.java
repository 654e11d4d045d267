package bootmend.change;

import bootmend.fat.check.VolumeFinding;

/**
 * One thing that is wrong with a card, and whether the repair mends it.
 *
 * @param id lower-case words joined by hyphens, the same in every version
 * @param where a path, or a sector or region by name
 * @param what a clause on what was found, and one on what follows from it
 */
public record RepairFinding(String id, String where, String what, boolean mended) {

    static RepairFinding of(VolumeFinding finding, boolean mended) {
        return new RepairFinding(
                finding.damage().id(),
                finding.where(),
                finding.what() + "; " + finding.damage().meaning(),
                mended);
    }

    RepairFinding withMended(boolean isMended) {
        return new RepairFinding(id, where, what, isMended);
    }
}
