package bootmend.fat;

import java.io.IOException;

/** One copy of a volume's file allocation table, read entry by entry. */
public final class FatTable {

    private final VolumeBytes volume;
    private final Geometry geometry;
    private final int copy;

    public FatTable(VolumeBytes volume, Geometry geometry, int copy) {
        this.volume = volume;
        this.geometry = geometry;
        this.copy = copy;
    }

    int copy() {
        return copy;
    }

    /** Whether the device reaches to this copy's first sector at all. */
    boolean isThere() throws IOException {
        return geometry.fatStart(copy) + geometry.bytesPerSector() <= volume.size();
    }

    /** What this copy says of {@code cluster}, which must be on the volume. */
    public FatEntry entry(long cluster) throws IOException {
        return FatEntry.of(geometry.type(), raw(cluster));
    }

    /** The entry's value without reserved bits; {@code cluster} may also be 0 or 1. */
    public long raw(long cluster) throws IOException {
        EntryPlace place = EntryPlace.of(geometry, copy, cluster);
        int unit = geometry.bytesPerSector();
        int at = (int) (place.offset() % unit);
        long start = place.offset() - at;
        byte[] sector = volume.sector(start);
        long value = 0;
        for (int i = 0; i < place.bytes(); i++, at++) {
            if (at == unit) {
                at = 0;
                sector = volume.sector(start + unit);
            }
            value |= (sector[at] & 0xFFL) << (8 * i);
        }
        return place.value(value);
    }

    /** Follows the chain from {@code first}, at most {@code limit} clusters far. */
    ClusterChain chain(long first, long limit) throws IOException {
        return ClusterChain.follow(geometry, this, first, limit);
    }
}
