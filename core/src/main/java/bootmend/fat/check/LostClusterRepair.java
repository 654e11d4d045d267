package bootmend.fat.check;

import bootmend.fat.FatScan;
import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import bootmend.fat.SectorChange;
import bootmend.fat.VolumeEdit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Marks clusters free that belong to no file, as long as every folder could be read and no file may miss them. */
final class LostClusterRepair implements VolumeRepair {

    /** Bounds the memory and the undo record; more is left to a second run. */
    private static final int MAX_CLUSTERS = 1 << 20;
    /** Where these are left, a lost cluster may be what mends them by hand. */
    private static final Set<VolumeFault> KEEPING = EnumSet.of(VolumeFault.CROSS_LINKED, VolumeFault.BAD_ENTRY);

    @Override
    public List<SectorChange> changes(VolumeCheck health) throws IOException {
        boolean needed = health.findings().stream().anyMatch(finding -> KEEPING.contains(finding.damage()));
        if (needed
                || !health.isBelievable()
                || !health.comparison().isSame()
                || !health.tree().complete()
                || health.choice().count().lost() == 0) {
            return List.of();
        }
        Geometry geometry = health.geometry();
        ClusterMap clusters = health.tree().clusters();
        List<Long> lost = new ArrayList<>();
        FatScan scan = new FatScan(health.bytes(), geometry, health.choice().copy());
        scan.visit(Geometry.FIRST_CLUSTER, geometry.clusterEnd(), (cluster, raw) -> {
            if (raw != 0 && raw != geometry.type().badMark() && !clusters.isUsed(cluster)) {
                lost.add(cluster);
            }
            return lost.size() < MAX_CLUSTERS;
        });
        VolumeEdit edit = new VolumeEdit(FatVolume.open(health.volume()));
        edit.free(lost);
        return edit.takeStep();
    }
}
