package bootmend.fat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Reads a volume's geometry from its boot sector and checks every number in it.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "Boot Sector and BPB" and "FAT Type
 * Determination".
 */
public final class BootSector {

    /** Bytes of a boot sector that carry meaning, whatever the sector size. */
    public static final int LENGTH = 512;

    private static final int MIN_SECTOR = 512;
    private static final int MAX_SECTOR = 4096;
    private static final int SIGNATURE = 0xAA55;
    /** FAT32 cluster numbers have 28 bits, and the top ones are marks. */
    private static final long MAX_CLUSTERS = 0x0FFFFFF5L;

    private final ByteBuffer bytes;

    private BootSector(byte[] sector) {
        this.bytes = ByteBuffer.wrap(sector, 0, LENGTH).order(ByteOrder.LITTLE_ENDIAN);
    }

    /**
     * The geometry that the first 512 bytes of {@code sector} describe.
     *
     * @throws BadVolumeException with the first thing that cannot be right
     */
    public static Geometry read(byte[] sector) throws BadVolumeException {
        return new BootSector(sector).geometry();
    }

    /** Byte 21, the media byte, which entry 0 of each FAT copy repeats. */
    public static int media(byte[] sector) {
        return sector[21] & 0xFF;
    }

    private Geometry geometry() throws BadVolumeException {
        require(u16(510) == SIGNATURE, "the boot sector lacks its signature 55 AA");
        int bytesPerSector = u16(11);
        require(
                bytesPerSector >= MIN_SECTOR && bytesPerSector <= MAX_SECTOR && isPowerOfTwo(bytesPerSector),
                "the boot sector gives " + bytesPerSector + " bytes a sector");
        int sectorsPerCluster = u8(13);
        require(isPowerOfTwo(sectorsPerCluster), "the boot sector gives " + sectorsPerCluster + " sectors a cluster");
        int reserved = u16(14);
        int fats = u8(16);
        require(reserved > 0 && fats > 0, "the boot sector gives no room for a FAT");

        int rootEntries = u16(17);
        boolean wide = u16(22) == 0;
        long sectorsPerFat = wide ? u32(36) : u16(22);
        long totalSectors = u16(19) != 0 ? u16(19) : u32(32);
        require(sectorsPerFat > 0, "the boot sector gives a FAT of no sectors");

        long rootSectors = ((long) rootEntries * Geometry.SLOT_BYTES + bytesPerSector - 1) / bytesPerSector;
        long before = reserved + fats * sectorsPerFat + rootSectors;
        require(totalSectors > before, "the boot sector gives fewer sectors than its own FATs need");
        long clusters = (totalSectors - before) / sectorsPerCluster;
        require(clusters > 0 && clusters < MAX_CLUSTERS, "the boot sector gives " + clusters + " clusters");

        // A volume laid out as FAT32 but with fewer clusters than the rule asks is read as FAT32 by other systems too.
        FatType type = wide && rootEntries == 0 ? FatType.FAT32 : FatType.ofClusterCount(clusters);
        require(
                type == FatType.FAT32 ? wide && rootEntries == 0 : !wide && rootEntries > 0,
                "the boot sector mixes the layouts of FAT16 and FAT32");
        long entries = sectorsPerFat * bytesPerSector * 8 / type.bits() - Geometry.FIRST_CLUSTER;
        require(entries > 0, "the boot sector gives a FAT without entries");
        return type == FatType.FAT32
                ? wide(
                        bytesPerSector,
                        sectorsPerCluster,
                        reserved,
                        fats,
                        totalSectors,
                        sectorsPerFat,
                        Math.min(clusters, entries))
                : narrow(
                        type,
                        bytesPerSector,
                        sectorsPerCluster,
                        reserved,
                        fats,
                        rootEntries,
                        totalSectors,
                        sectorsPerFat,
                        Math.min(clusters, entries));
    }

    private Geometry wide(
            int bytesPerSector,
            int sectorsPerCluster,
            int reserved,
            int fats,
            long totalSectors,
            long sectorsPerFat,
            long clusters)
            throws BadVolumeException {
        int flags = u16(40);
        boolean mirrored = (flags & 0x80) == 0;
        int active = mirrored ? 0 : flags & 0x0F;
        require(active < fats, "the boot sector names FAT copy " + active + " of " + fats);
        long root = u32(44);
        require(
                root >= Geometry.FIRST_CLUSTER && root - Geometry.FIRST_CLUSTER < clusters,
                "the boot sector puts the root folder at cluster " + root + ", which is not on the volume");
        boolean named = u8(66) == 0x29;
        return new Geometry(
                FatType.FAT32,
                bytesPerSector,
                sectorsPerCluster,
                reserved,
                fats,
                0,
                totalSectors,
                sectorsPerFat,
                clusters,
                root,
                within(u16(48), reserved),
                within(u16(50), reserved),
                mirrored,
                active,
                named ? u32(67) : 0,
                named ? text(71, 11) : "");
    }

    private Geometry narrow(
            FatType type,
            int bytesPerSector,
            int sectorsPerCluster,
            int reserved,
            int fats,
            int rootEntries,
            long totalSectors,
            long sectorsPerFat,
            long clusters) {
        boolean named = u8(38) == 0x29;
        return new Geometry(
                type,
                bytesPerSector,
                sectorsPerCluster,
                reserved,
                fats,
                rootEntries,
                totalSectors,
                sectorsPerFat,
                clusters,
                0,
                0,
                0,
                true,
                0,
                named ? u32(39) : 0,
                named ? text(43, 11) : "");
    }

    /** A sector number of the reserved region; 0 and FFFF both say "none". */
    private static int within(int sector, int reserved) {
        return sector < reserved ? sector : 0;
    }

    private static void require(boolean holds, String why) throws BadVolumeException {
        if (!holds) {
            throw new BadVolumeException(why);
        }
    }

    private static boolean isPowerOfTwo(int n) {
        return Integer.bitCount(n) == 1;
    }

    private int u8(int at) {
        return bytes.get(at) & 0xFF;
    }

    private int u16(int at) {
        return bytes.getShort(at) & 0xFFFF;
    }

    private long u32(int at) {
        return bytes.getInt(at) & 0xFFFFFFFFL;
    }

    private String text(int at, int length) {
        byte[] raw = new byte[length];
        bytes.get(at, raw);
        return new String(raw, StandardCharsets.ISO_8859_1).stripTrailing();
    }
}
