package bootmend.fat.check;

import bootmend.device.OverlayDevice;
import bootmend.fat.FatHead;
import bootmend.fat.FatTable;
import bootmend.fat.Geometry;
import bootmend.fat.VolumeBytes;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The FAT copy that serves a volume's files best, found by walking the tree with each.
 *
 * <p>Where copies differ, a copy is also tried with those of its sectors that are wholly empty filled from another copy:
 * a worn card that answers zeros leaves such sectors.
 *
 * @param copy its number from 0
 * @param filled sectors that were taken from another copy, by place on the volume
 * @param damaged files and folders that something is wrong with
 * @param evidence a clause on what the copies were judged by
 * @param marked whether its first two entries are right
 */
record FatChoice(
        int copy, Map<Long, byte[]> filled, Tree tree, FatCount count, int damaged, boolean marked, String evidence) {

    /** Sectors that are compared and copied at most, which bounds the memory; more is not repaired. */
    static final int MAX_SECTORS = 16_384;

    /**
     * @param volume whose boot sector says {@code geometry}
     * @param media byte 21 of the boot sector
     */
    static FatChoice of(BlockDevice volume, Geometry geometry, int media, FatComparison comparison) throws IOException {
        FatChoice best = null;
        StringBuilder evidence = new StringBuilder();
        for (Candidate candidate : candidates(volume, geometry, comparison)) {
            FatChoice choice = candidate.tried(volume, geometry, media);
            evidence.append(choice.words()).append(", ");
            if (best == null || choice.isBetterThan(best)) {
                best = choice;
            }
        }
        return best.judgedBy(evidence + best.name() + " is taken");
    }

    private FatChoice judgedBy(String words) {
        return new FatChoice(copy, filled, tree, count, damaged, marked, words);
    }

    /** The volume as it reads with this copy. */
    BlockDevice readable(BlockDevice volume) {
        return filled.isEmpty() ? volume : new OverlayDevice(volume, filled);
    }

    private String name() {
        return "copy " + (copy + 1) + (filled.isEmpty() ? "" : " with its empty sectors filled from another");
    }

    private String words() {
        return name() + " leaves " + Counted.of(damaged, "damaged file") + " and "
                + Counted.of(count.lost(), "lost cluster");
    }

    boolean isBetterThan(FatChoice other) {
        if (damaged != other.damaged) {
            return damaged < other.damaged;
        }
        return count.lost() != other.count.lost() ? count.lost() < other.count.lost() : marked && !other.marked;
    }

    /** A copy with some sectors taken from another. */
    private record Candidate(int copy, Map<Long, byte[]> filled) {

        FatChoice tried(BlockDevice volume, Geometry geometry, int media) throws IOException {
            BlockDevice device = filled.isEmpty() ? volume : new OverlayDevice(volume, filled);
            VolumeBytes bytes = new VolumeBytes(device, geometry.bytesPerSector());
            Tree tree = TreeWalk.walk(bytes, geometry, copy);
            FatCount count = FatCount.of(bytes, geometry, copy, tree.clusters());
            FatHead head = FatHead.read(new FatTable(bytes, geometry, copy), geometry.type(), media);
            return new FatChoice(
                    copy, filled, tree, count, tree.findings(geometry).size(), head.marked(), "");
        }
    }

    private static List<Candidate> candidates(BlockDevice volume, Geometry geometry, FatComparison comparison)
            throws IOException {
        List<Integer> copies = FatComparison.copies(geometry);
        if (comparison.isSame()) {
            return List.of(new Candidate(copies.get(0), Map.of()));
        }
        List<Candidate> candidates = new ArrayList<>();
        for (int copy : copies) {
            candidates.add(new Candidate(copy, Map.of()));
        }
        if (comparison.sectors().cardinality() <= MAX_SECTORS) {
            for (int copy : copies) {
                Map<Long, byte[]> filled = filled(volume, geometry, comparison.sectors(), copy);
                if (!filled.isEmpty()) {
                    candidates.add(new Candidate(copy, filled));
                }
            }
        }
        return candidates;
    }

    private static Map<Long, byte[]> filled(BlockDevice volume, Geometry geometry, BitSet sectors, int copy)
            throws IOException {
        VolumeBytes bytes = new VolumeBytes(volume, geometry.bytesPerSector());
        Map<Long, byte[]> filled = new TreeMap<>();
        for (int sector = sectors.nextSetBit(0); sector >= 0; sector = sectors.nextSetBit(sector + 1)) {
            long in = (long) sector * geometry.bytesPerSector();
            if (isEmpty(bytes.sector(geometry.fatStart(copy) + in))) {
                for (int other : FatComparison.copies(geometry)) {
                    byte[] content = bytes.sector(geometry.fatStart(other) + in);
                    if (!isEmpty(content)) {
                        filled.putIfAbsent(geometry.fatStart(copy) + in, content);
                    }
                }
            }
        }
        return filled;
    }

    private static boolean isEmpty(byte[] sector) {
        for (byte b : sector) {
            if (b != 0) {
                return false;
            }
        }
        return true;
    }
}
