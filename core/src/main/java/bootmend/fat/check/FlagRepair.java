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

    private static final Set<VolumeFault> MARKS =
            EnumSet.of(VolumeFault.IN_USE, VolumeFault.HARD_ERROR, VolumeFault.FAT_MARKS);
    private static final int PIECE = 65536;

    @Override
    public List<SectorChange> changes(VolumeCheck health) throws IOException {
        if (!health.findings().stream().allMatch(finding -> MARKS.contains(finding.damage()))) {
            return List.of();
        }
        FatType type = health.geometry().type();
        FatHead head = health.head();
        VolumeEdit edit = new VolumeEdit(FatVolume.open(health.volume()));
        if (!head.marked()) {
            edit.putMark(0, FatHead.first(type, health.media()));
            edit.putMark(1, type.endMark());
        } else if (!head.cleanShutdown() || !head.noHardError()) {
            long second = new FatTable(
                            health.bytes(), health.geometry(), health.choice().copy())
                    .raw(1);
            edit.putMark(
                    1,
                    second
                            | FatHead.cleanBit(type)
                            | (head.noHardError() || canBeRead(health) ? FatHead.errorBit(type) : 0));
        }
        if (health.putAway().inUse()) {
            edit.putBootFlag(DirtyFlag.flagOffset(type), DirtyFlag.IN_USE, false);
        }
        return edit.takeStep();
    }

    /** Whether every cluster in use reads without an error. */
    private static boolean canBeRead(VolumeCheck health) {
        Geometry geometry = health.geometry();
        VolumeBytes bytes = health.bytes();
        try {
            int step = Math.max(1, PIECE / geometry.bytesPerCluster());
            for (long cluster = Geometry.FIRST_CLUSTER; cluster < geometry.clusterEnd(); cluster += step) {
                long end = Math.min(geometry.clusterEnd(), cluster + step);
                if (anyUsed(health, cluster, end)) {
                    bytes.read(geometry.clusterStart(cluster), (int) (end - cluster) * geometry.bytesPerCluster());
                }
            }
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private static boolean anyUsed(VolumeCheck health, long from, long to) {
        for (long cluster = from; cluster < to; cluster++) {
            if (health.tree().clusters().isUsed(cluster)) {
                return true;
            }
        }
        return false;
    }
}
