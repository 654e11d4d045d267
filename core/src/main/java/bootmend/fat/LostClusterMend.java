package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Marks clusters free that belong to no file, as long as every folder could be read. */
final class LostClusterMend implements Mend {

    /** Bounds the memory and the undo record; more is left to a second run. */
    private static final int MAX_CLUSTERS = 1 << 20;

    @Override
    public List<SectorChange> changes(Health health) throws IOException {
        if (!health.comparison().isSame() || !health.tree().complete() || health.choice().count().lost() == 0) {
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
