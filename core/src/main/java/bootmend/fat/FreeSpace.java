package bootmend.fat;

import java.io.IOException;
import java.util.BitSet;

/** Which clusters of a part of a volume belong to no file, and what stands in them; memory is one bit a cluster. */
public final class FreeSpace {

    private final FatVolume volume;
    private final long from;
    private final BitSet free;

    private FreeSpace(FatVolume volume, long from, BitSet free) {
        this.volume = volume;
        this.from = from;
        this.free = free;
    }

    /**
     * Of the clusters {@code from} (inclusive) to {@code to} (exclusive), as far as the volume has them.
     *
     * @throws IllegalArgumentException for more clusters than a FAT can count
     */
    public static FreeSpace of(FatVolume volume, long from, long to) throws IOException {
        Geometry geometry = volume.geometry();
        long first = Math.max(Geometry.FIRST_CLUSTER, from);
        long end = Math.max(first, Math.min(to, readableEnd(volume)));
        if (end - first > FatType.FAT32.mask()) {
            throw new IllegalArgumentException("no FAT has " + (end - first) + " clusters");
        }
        BitSet free = new BitSet();
        new FatScan(volume.bytes(), geometry, volume.table().copy()).visit(first, end, (cluster, raw) -> {
            if (raw == 0) {
                free.set((int) (cluster - first));
            }
            return true;
        });
        return new FreeSpace(volume, first, free);
    }

    /** One past the last cluster whose bytes are there, which differs on an image that was cut off. */
    private static long readableEnd(FatVolume volume) throws IOException {
        Geometry geometry = volume.geometry();
        long whole = Math.max(0, volume.bytes().size() - geometry.dataStart()) / geometry.bytesPerCluster();
        return Math.min(geometry.clusterEnd(), Geometry.FIRST_CLUSTER + whole);
    }

    /** How many clusters are free. */
    public long count() {
        return free.cardinality();
    }

    /** The first free cluster from {@code cluster} on; -1 where there is none. */
    public long next(long cluster) {
        long index = Math.max(0, cluster - from);
        int found = index > Integer.MAX_VALUE ? -1 : free.nextSetBit((int) index);
        return found < 0 ? -1 : from + found;
    }

    /** How many free clusters lie side by side from {@code cluster} on, at most {@code most}. */
    public int run(long cluster, int most) {
        int index = (int) (cluster - from);
        return Math.min(most, free.nextClearBit(index) - index);
    }

    /** What stands in {@code count} clusters from {@code cluster} on. */
    public byte[] read(long cluster, int count) throws IOException {
        Geometry geometry = volume.geometry();
        return volume.bytes()
                .read(geometry.clusterStart(cluster), Math.multiplyExact(count, geometry.bytesPerCluster()));
    }
}
