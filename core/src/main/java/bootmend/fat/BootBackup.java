package bootmend.fat;

import java.io.IOException;
import java.util.Optional;

/**
 * The copy that a FAT32 volume keeps of its boot sector.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT32 FSInfo Sector Structure and Backup Boot
 * Sector" (sector 6, no other value recommended).
 *
 * @param offset its first byte on the volume
 * @param sector its first 512 bytes
 */
public record BootBackup(long offset, byte[] sector, Geometry geometry) {

    static final int SECTOR = 6;

    /** Looks where a backup stands at each sector size, for a volume whose boot sector says nothing. */
    public static Optional<BootBackup> find(VolumeBytes device) throws IOException {
        for (int size = 512; size <= 4096; size *= 2) {
            long at = (long) SECTOR * size;
            if (at + BootSector.LENGTH > device.size()) {
                break;
            }
            try {
                byte[] sector = device.read(at, BootSector.LENGTH);
                Geometry geometry = BootSector.read(sector);
                if (geometry.type() == FatType.FAT32 && geometry.bytesPerSector() == size) {
                    return Optional.of(new BootBackup(at, sector, geometry));
                }
            } catch (BadVolumeException e) {
                // Not a backup at this sector size; the next size may have one.
            }
        }
        return Optional.empty();
    }
}
