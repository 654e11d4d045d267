package bootmend.fat.check;

import bootmend.fat.DirtyFlag;
import bootmend.fat.FatType;
import bootmend.fat.SectorChange;
import bootmend.fat.SectorKind;
import bootmend.fat.VolumeBytes;
import java.io.IOException;
import java.util.List;

/** Copies the boot sector over its backup, or the backup over the boot sector. */
final class BootSectorRepair implements VolumeRepair {

    @Override
    public List<SectorChange> changes(VolumeCheck check) throws IOException {
        BootSectors boot = check.boot();
        int unit = check.geometry().bytesPerSector();
        VolumeBytes bytes = new VolumeBytes(check.volume(), unit);
        if (check.isBackupFirst()) {
            return List.of(change(0, bytes.read(0, unit), bytes.read(boot.backupOffset(), unit)));
        }
        if (boot.isSame()) {
            return List.of();
        }
        byte[] first = bytes.read(0, unit);
        first[DirtyFlag.flagOffset(FatType.FAT32)] &= ~DirtyFlag.IN_USE;
        return List.of(change(boot.backupOffset(), bytes.read(boot.backupOffset(), unit), first));
    }

    private static SectorChange change(long offset, byte[] before, byte[] after) {
        return new SectorChange(SectorKind.BOOT_SECTOR, offset, before, after);
    }
}
