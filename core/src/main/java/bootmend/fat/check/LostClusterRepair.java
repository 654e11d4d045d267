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

    /** Where these are left, a lost cluster may be what repairs them by hand. */
    private static final Set<VolumeFault> KEEPING = EnumSet.of(VolumeFault.CROSS_LINKED, VolumeFault.BAD_ENTRY);

    @Override
    public List<SectorChange> changes(VolumeCheck check) throws IOException {
        boolean needed = check.findings().stream()
                .anyMatch(finding -> KEEPING.stream().anyMatch(fault -> fault.isKindOf(finding)));
        if (needed
                || !check.isBelievable()
                || !check.comparison().isSame()
                || !check.tree().complete()
                || check.choice().count().lost() == 0) {
            return List.of();
        }
        Geometry geometry = check.geometry();
        ClusterMap clusters = check.tree().clusters();
        List<Long> lost = new ArrayList<>();
        FatScan scan = new FatScan(check.bytes(), geometry, check.choice().copy());
        scan.visit(Geometry.FIRST_CLUSTER, geometry.clusterEnd(), (cluster, raw) -> {
            if (raw != 0 && raw != geometry.type().badMark() && !clusters.isUsed(cluster)) {
                lost.add(cluster);
            }
            return lost.size() < FileRepair.MOST_FREED;
        });
        VolumeEdit edit = new VolumeEdit(FatVolume.open(check.volume()));
        edit.free(lost);
        return edit.takeStep();
    }
}
