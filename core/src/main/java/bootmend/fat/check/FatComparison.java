package bootmend.fat.check;

import bootmend.fat.FatTable;
import bootmend.fat.Geometry;
import bootmend.fat.VolumeBytes;
import java.io.IOException;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Where the FAT copies in use differ, as far as their entries go; what stands behind the last entry does not count.
 *
 * <p>Memory: one bit a FAT sector.
 */
final class FatComparison {

    /** Two are usual; a boot sector that gives more than this is not believed, and the rest is not looked at. */
    static final int MAX_COPIES = 4;

    private static final int PIECE = 65536;

    private final BitSet sectors = new BitSet();
    private long entries;

    private FatComparison() {}

    static FatComparison of(VolumeBytes bytes, Geometry geometry) throws IOException {
        FatComparison comparison = new FatComparison();
        List<Integer> copies = copies(geometry);
        for (int other : copies.subList(1, copies.size())) {
            comparison.compare(bytes, geometry, copies.get(0), other);
        }
        comparison.count(bytes, geometry);
        return comparison;
    }

    /** The copies in use that are looked at. */
    static List<Integer> copies(Geometry geometry) {
        List<Integer> all = geometry.fatsInUse();
        return all.subList(0, Math.min(MAX_COPIES, all.size()));
    }

    boolean isSame() {
        return sectors.isEmpty();
    }

    /** Sectors that differ, counted from the start of a copy. */
    BitSet sectors() {
        return sectors;
    }

    /** Entries that differ. */
    long entries() {
        return entries;
    }

    private void compare(VolumeBytes bytes, Geometry geometry, int one, int other) throws IOException {
        long length = geometry.fatBytesInUse();
        int unit = geometry.bytesPerSector();
        for (long at = 0; at < length; at += PIECE) {
            int n = (int) Math.min(PIECE, length - at);
            byte[] a = bytes.read(geometry.fatStart(one) + at, n);
            byte[] b = bytes.read(geometry.fatStart(other) + at, n);
            if (Arrays.equals(a, b)) {
                continue;
            }
            for (int from = 0; from < n; from += unit) {
                int to = Math.min(n, from + unit);
                if (!Arrays.equals(a, from, to, b, from, to)) {
                    sectors.set((int) ((at + from) / unit));
                }
            }
        }
    }

    private void count(VolumeBytes bytes, Geometry geometry) throws IOException {
        List<FatTable> tables = copies(geometry).stream()
                .map(c -> new FatTable(bytes, geometry, c))
                .toList();
        long sectorBits = geometry.bytesPerSector() * 8L;
        long done = 0;
        for (int sector = sectors.nextSetBit(0); sector >= 0; sector = sectors.nextSetBit(sector + 1)) {
            long from = Math.max(done, sector * sectorBits / geometry.type().bits());
            long to = Math.min(
                    geometry.clusterEnd(),
                    ((sector + 1) * sectorBits - 1) / geometry.type().bits() + 1);
            for (long entry = from; entry < to; entry++) {
                entries += differs(tables, entry) ? 1 : 0;
            }
            done = to;
        }
    }

    private static boolean differs(List<FatTable> tables, long entry) throws IOException {
        long first = tables.get(0).raw(entry);
        for (FatTable table : tables.subList(1, tables.size())) {
            if (table.raw(entry) != first) {
                return true;
            }
        }
        return false;
    }
}
