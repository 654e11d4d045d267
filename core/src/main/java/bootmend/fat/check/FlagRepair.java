package bootmend.fat.check;

import bootmend.fat.DirtyFlag;
import bootmend.fat.FatHead;
import bootmend.fat.FatTable;
import bootmend.fat.FatType;
import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import bootmend.fat.SectorChange;
import bootmend.fat.VolumeBytes;
import bootmend.fat.VolumeEdit;
import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Takes the marks of a volume in use or with errors away, where nothing else is wrong. */
final class FlagRepair implements VolumeRepair {

    private static final Set<VolumeFault> FLAGS =
            EnumSet.of(VolumeFault.IN_USE, VolumeFault.HARD_ERROR, VolumeFault.FAT_MARKS);
    private static final int PIECE = 65536;

    @Override
    public List<SectorChange> changes(VolumeCheck check) throws IOException {
        if (!check.findings().stream().allMatch(finding -> FLAGS.stream().anyMatch(fault -> fault.isKindOf(finding)))) {
            return List.of();
        }
        FatType type = check.geometry().type();
        FatHead head = check.head();
        VolumeEdit edit = new VolumeEdit(FatVolume.open(check.volume()));
        if (!head.marked()) {
            edit.putMark(0, FatHead.first(type, check.media()));
            edit.putMark(1, type.endMark());
        } else if (!head.cleanShutdown() || !head.noHardError()) {
            long second =
                    new FatTable(check.bytes(), check.geometry(), check.choice().copy()).raw(1);
            edit.putMark(
                    1,
                    second
                            | FatHead.cleanBit(type)
                            | (head.noHardError() || canBeRead(check) ? FatHead.errorBit(type) : 0));
        }
        if (check.dirtyFlag().inUse()) {
            edit.putBootFlag(DirtyFlag.flagOffset(type), DirtyFlag.IN_USE, false);
        }
        return edit.takeStep();
    }

    /** Whether every cluster in use reads without an error. */
    private static boolean canBeRead(VolumeCheck check) {
        Geometry geometry = check.geometry();
        VolumeBytes bytes = check.bytes();
        try {
            int step = Math.max(1, PIECE / geometry.bytesPerCluster());
            for (long cluster = Geometry.FIRST_CLUSTER; cluster < geometry.clusterEnd(); cluster += step) {
                long end = Math.min(geometry.clusterEnd(), cluster + step);
                if (anyUsed(check, cluster, end)) {
                    bytes.read(geometry.clusterStart(cluster), (int) (end - cluster) * geometry.bytesPerCluster());
                }
            }
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private static boolean anyUsed(VolumeCheck check, long from, long to) {
        for (long cluster = from; cluster < to; cluster++) {
            if (check.tree().clusters().isUsed(cluster)) {
                return true;
            }
        }
        return false;
    }
}
