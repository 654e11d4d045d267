package bootmend.fat;

import java.io.IOException;

/**
 * How full a volume is, counted in its first FAT copy in use.
 *
 * @param clusters data clusters in all
 * @param freeClusters those marked free
 * @param clusterBytes bytes of one cluster
 */
public record VolumeSpace(long clusters, long freeClusters, int clusterBytes) {

    /** Counts by reading one FAT copy whole, in large pieces. */
    public static VolumeSpace of(FatVolume volume) throws IOException {
        Geometry geometry = volume.geometry();
        long[] free = {0};
        new FatScan(volume.bytes(), geometry, geometry.fatsInUse().get(0))
                .visit(Geometry.FIRST_CLUSTER, geometry.clusterEnd(), (cluster, raw) -> {
                    free[0] += raw == 0 ? 1 : 0;
                    return true;
                });
        return new VolumeSpace(geometry.clusterCount(), free[0], geometry.bytesPerCluster());
    }

    /** Free room in bytes. */
    public long freeBytes() {
        return freeClusters * clusterBytes;
    }
}
