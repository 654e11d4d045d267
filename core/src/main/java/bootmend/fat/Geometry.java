package bootmend.fat;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Where everything on a FAT volume lies, as its boot sector says; every place is in bytes from the volume's start.
 *
 * @param bytesPerSector 512, 1024, 2048 or 4096
 * @param sectorsPerCluster a power of two, 1 to 128
 * @param reservedSectors sectors before the first FAT copy, at least 1
 * @param fatCount FAT copies, at least 1
 * @param rootEntries 32-byte slots of the fixed root folder; 0 on FAT32
 * @param totalSectors sectors of the volume
 * @param sectorsPerFat sectors of one FAT copy
 * @param clusterCount data clusters; they are numbered from 2
 * @param rootCluster first cluster of the root folder on FAT32, else 0
 * @param fsInfoSector sector of FSInfo on FAT32, or 0
 * @param backupBootSector sector of the boot sector's copy on FAT32, or 0
 * @param mirrored whether every FAT copy is kept alike
 * @param activeFat the one copy in use where {@code mirrored} is false
 * @param serial volume serial number, 32 bits, or 0
 * @param label the boot sector's volume label, trimmed
 */
public record Geometry(
        FatType type,
        int bytesPerSector,
        int sectorsPerCluster,
        int reservedSectors,
        int fatCount,
        int rootEntries,
        long totalSectors,
        long sectorsPerFat,
        long clusterCount,
        long rootCluster,
        int fsInfoSector,
        int backupBootSector,
        boolean mirrored,
        int activeFat,
        long serial,
        String label) {

    /** The number of the first data cluster. */
    public static final long FIRST_CLUSTER = 2;

    static final int SLOT_BYTES = 32;

    public int bytesPerCluster() {
        return bytesPerSector * sectorsPerCluster;
    }

    /** Bytes of the volume. */
    public long length() {
        return totalSectors * bytesPerSector;
    }

    public long fatStart(int copy) {
        return (reservedSectors + copy * sectorsPerFat) * bytesPerSector;
    }

    /** Bytes of one FAT copy. */
    public long fatLength() {
        return sectorsPerFat * bytesPerSector;
    }

    /** Bytes of one FAT copy up to its last entry. */
    public long fatBytesInUse() {
        EntryPlace last = EntryPlace.of(this, 0, clusterEnd() - 1);
        return Math.min(fatLength(), last.offset() + last.bytes() - fatStart(0));
    }

    /** The fixed root folder of FAT12 and FAT16. */
    public long rootStart() {
        return fatStart(fatCount);
    }

    public long rootLength() {
        return (long) rootEntries * SLOT_BYTES;
    }

    public long dataStart() {
        long rootSectors = (rootLength() + bytesPerSector - 1) / bytesPerSector;
        return rootStart() + rootSectors * bytesPerSector;
    }

    public boolean hasCluster(long cluster) {
        return cluster >= FIRST_CLUSTER && cluster - FIRST_CLUSTER < clusterCount;
    }

    /** First byte of {@code cluster}, which must be on the volume. */
    public long clusterStart(long cluster) {
        if (!hasCluster(cluster)) {
            throw new IllegalArgumentException("no cluster " + cluster);
        }
        return dataStart() + (cluster - FIRST_CLUSTER) * bytesPerCluster();
    }

    /** One past the highest cluster number. */
    public long clusterEnd() {
        return FIRST_CLUSTER + clusterCount;
    }

    /** The FAT copies that are kept up to date, by number from 0. */
    public List<Integer> fatsInUse() {
        return mirrored ? IntStream.range(0, fatCount).boxed().toList() : List.of(activeFat);
    }

    /** Clusters needed for {@code bytes} bytes; none for an empty file. */
    public long clustersFor(long bytes) {
        return (bytes + bytesPerCluster() - 1) / bytesPerCluster();
    }

    /** Whether everything lies where it lies on {@code other}, whatever the names of the two. */
    public boolean hasLayoutOf(Geometry other) {
        return withoutNames().equals(other.withoutNames());
    }

    private Geometry withoutNames() {
        return new Geometry(
                type,
                bytesPerSector,
                sectorsPerCluster,
                reservedSectors,
                fatCount,
                rootEntries,
                totalSectors,
                sectorsPerFat,
                clusterCount,
                rootCluster,
                fsInfoSector,
                backupBootSector,
                mirrored,
                activeFat,
                0,
                "");
    }
}
