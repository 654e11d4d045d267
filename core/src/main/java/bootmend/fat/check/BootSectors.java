package bootmend.fat.check;

import bootmend.fat.BadVolumeException;
import bootmend.fat.BootBackup;
import bootmend.fat.BootSector;
import bootmend.fat.DirtyFlag;
import bootmend.fat.FatType;
import bootmend.fat.Geometry;
import bootmend.fat.VolumeBytes;
import bootmend.finding.Finding;
import bootmend.finding.Place;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A volume's boot sector and, on FAT32, its backup, each read and judged.
 *
 * @param first the first 512 bytes of the volume
 * @param geometry what it says, or nothing where it is damaged
 * @param fault why it is damaged, or empty
 * @param backup the backup where it can be read as one
 * @param backupOffset where the backup is or should be, 0 where the volume has none
 * @param backupBytes what stands there
 */
record BootSectors(
        byte[] first,
        Optional<Geometry> geometry,
        String fault,
        Optional<BootBackup> backup,
        long backupOffset,
        byte[] backupBytes) {

    /** @throws BadVolumeException where neither can be read */
    static BootSectors read(BlockDevice volume) throws IOException {
        VolumeBytes bytes = new VolumeBytes(volume, BootSector.LENGTH);
        if (volume.getSize() < BootSector.LENGTH) {
            throw new BadVolumeException("there is no room for a boot sector");
        }
        byte[] first = bytes.read(0, BootSector.LENGTH);
        Geometry geometry;
        try {
            geometry = BootSector.read(first);
        } catch (BadVolumeException e) {
            BootBackup backup = BootBackup.find(bytes).orElseThrow(() -> e);
            return new BootSectors(
                    first, Optional.empty(), e.getMessage(), Optional.of(backup), backup.offset(), backup.sector());
        }
        long at = (long) geometry.backupBootSector() * geometry.bytesPerSector();
        if (at == 0 || at + BootSector.LENGTH > volume.getSize()) {
            return new BootSectors(first, Optional.of(geometry), "", Optional.empty(), 0, new byte[0]);
        }
        byte[] copy = bytes.read(at, BootSector.LENGTH);
        return new BootSectors(first, Optional.of(geometry), "", parsed(at, copy), at, copy);
    }

    private static Optional<BootBackup> parsed(long at, byte[] sector) {
        try {
            return Optional.of(new BootBackup(at, sector, BootSector.read(sector)));
        } catch (BadVolumeException e) {
            return Optional.empty();
        }
    }

    /** Whether the two hold the same; the in-use flag is the boot sector's alone, no system keeps it in the backup. */
    boolean isSame() {
        if (backupOffset == 0) {
            return true;
        }
        byte[] one = first.clone();
        byte[] other = backupBytes.clone();
        int flag = DirtyFlag.flagOffset(FatType.FAT32);
        one[flag] &= ~DirtyFlag.IN_USE;
        other[flag] &= ~DirtyFlag.IN_USE;
        return Arrays.equals(one, other);
    }

    /** Whether both can be read and describe different volumes, so that only the files can tell which is right. */
    boolean disagree() {
        return geometry.isPresent()
                && backup.isPresent()
                && !isSame()
                && !geometry.get().hasLayoutOf(backup.get().geometry());
    }

    /** @param backupFirst whether the backup is the one to be trusted */
    List<Finding> findings(boolean backupFirst) {
        List<Finding> findings = new ArrayList<>();
        if (geometry.isEmpty()) {
            findings.add(VolumeFault.BOOT_SECTOR.at(Place.Region.BOOT_SECTOR, fault + "; its backup is whole"));
        } else if (backupFirst) {
            findings.add(VolumeFault.BOOT_SECTOR.at(
                    Place.Region.BOOT_SECTOR,
                    "it describes another volume than the one "
                            + "that the FAT and the folders belong to; its backup describes that one"));
        } else if (!isSame()) {
            findings.add(VolumeFault.BOOT_BACKUP.at(
                    Place.Region.BOOT_BACKUP,
                    backup.isEmpty()
                            ? "it cannot be read as a boot sector; the boot sector itself is whole"
                            : "it differs from the boot sector, which is the one that fits the files"));
        }
        return findings;
    }
}
