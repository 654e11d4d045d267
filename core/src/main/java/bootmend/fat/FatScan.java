package bootmend.fat;

import java.io.IOException;

/** Goes through a run of a FAT copy's entries in large reads. */
public final class FatScan {

    /** An even number, so that a piece of FAT12 begins on a whole byte. */
    private static final int CLUSTERS_A_PIECE = 12288;

    /** Takes one entry; returns whether to go on. */
    @FunctionalInterface
    public interface Visitor {
        boolean entry(long cluster, long raw) throws IOException;
    }

    private final VolumeBytes volume;
    private final Geometry geometry;
    private final int copy;

    public FatScan(VolumeBytes volume, Geometry geometry, int copy) {
        this.volume = volume;
        this.geometry = geometry;
        this.copy = copy;
    }

    /** Visits the clusters {@code from} (inclusive) to {@code to} (exclusive); returns whether the visitor went on to the end. */
    public boolean visit(long from, long to, Visitor visitor) throws IOException {
        for (long first = from; first < to; first += CLUSTERS_A_PIECE) {
            long end = Math.min(to, first + CLUSTERS_A_PIECE);
            EntryPlace start = EntryPlace.of(geometry, copy, first);
            EntryPlace last = EntryPlace.of(geometry, copy, end - 1);
            byte[] piece = volume.read(start.offset(), (int) (last.offset() + last.bytes() - start.offset()));
            for (long cluster = first; cluster < end; cluster++) {
                EntryPlace place = EntryPlace.of(geometry, copy, cluster);
                int at = (int) (place.offset() - start.offset());
                long raw = 0;
                for (int i = 0; i < place.bytes(); i++) {
                    raw |= (piece[at + i] & 0xFFL) << (8 * i);
                }
                if (!visitor.entry(cluster, place.value(raw))) {
                    return false;
                }
            }
        }
        return true;
    }
}
