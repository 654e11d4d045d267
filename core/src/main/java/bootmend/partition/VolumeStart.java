package bootmend.partition;

import java.nio.ByteBuffer;

/**
 * Tells a FAT boot sector from an MBR by its jump, sector size, cluster size and FAT count.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, section "Boot Sector and BPB".
 */
final class VolumeStart {

    /** Where a FAT32 volume keeps the copy of its boot sector; the source recommends no other value. */
    static final int BACKUP_SECTOR = 6;

    private static final int SIGNATURE_OFFSET = 510;

    private VolumeStart() {}

    static boolean hasSignature(ByteBuffer sector) {
        return (sector.getShort(SIGNATURE_OFFSET) & 0xFFFF) == 0xAA55;
    }

    static int bytesPerSector(ByteBuffer sector) {
        return sector.getShort(11) & 0xFFFF;
    }

    /** How long the volume says it is, in sectors of its own; 0 where it does not. */
    static long sectors(ByteBuffer sector) {
        int few = sector.getShort(19) & 0xFFFF;
        return few != 0 ? few : sector.getInt(32) & 0xFFFFFFFFL;
    }

    /** Whether it is a FAT32 volume's, and says that its copy stands where copies do. */
    static boolean isFat32WithBackup(ByteBuffer sector) {
        return sector.getShort(22) == 0 && sector.getInt(36) != 0 && sector.getShort(50) == BACKUP_SECTOR;
    }

    static boolean looksLikeFat(ByteBuffer sector) {
        int jump = sector.get(0) & 0xFF;
        int bytesPerSector = sector.getShort(11) & 0xFFFF;
        int sectorsPerCluster = sector.get(13) & 0xFF;
        int reserved = sector.getShort(14) & 0xFFFF;
        int fats = sector.get(16) & 0xFF;
        return (jump == 0xEB || jump == 0xE9)
                && bytesPerSector >= PartitionTableReader.MIN_SECTOR
                && bytesPerSector <= PartitionTableReader.MAX_SECTOR
                && Integer.bitCount(bytesPerSector) == 1
                && Integer.bitCount(sectorsPerCluster) == 1
                && reserved > 0
                && fats > 0;
    }
}
