package bootmend.fat.check;

import bootmend.fat.FatScan;
import bootmend.fat.Geometry;
import bootmend.fat.VolumeBytes;
import java.io.IOException;

/**
 * What a FAT copy holds beside the files in the tree.
 *
 * @param free clusters marked free
 * @param lost clusters marked as in use that nothing in the tree has
 * @param firstFree the lowest free cluster, 0 where there is none
 */
record FatCount(long free, long lost, long firstFree) {

    static FatCount of(VolumeBytes bytes, Geometry geometry, int copy, ClusterMap clusters) throws IOException {
        long[] counts = new long[3];
        new FatScan(bytes, geometry, copy).visit(Geometry.FIRST_CLUSTER, geometry.clusterEnd(), (cluster, raw) -> {
            if (raw == 0) {
                counts[0]++;
                counts[2] = counts[2] == 0 ? cluster : counts[2];
            } else if (raw != geometry.type().badMark() && !clusters.isUsed(cluster)) {
                counts[1]++;
            }
            return true;
        });
        return new FatCount(counts[0], counts[1], counts[2]);
    }
}
