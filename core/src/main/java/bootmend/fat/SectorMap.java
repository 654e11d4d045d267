package bootmend.fat;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.util.Optional;

/** What each sector of a volume is for, by its place; every place is in bytes from the volume's start. */
public final class SectorMap {

    private static final int FS_INFO_HINTS_END = FsInfo.NEXT_FREE_OFFSET + Integer.BYTES;

    private final Geometry geometry;

    private SectorMap(Geometry geometry) {
        this.geometry = geometry;
    }

    /** Of a volume as it is. */
    public static SectorMap of(FatVolume volume) {
        return new SectorMap(volume.geometry());
    }

    /**
     * Of a volume as a repair leaves it, which is laid out as its boot sector, or the backup of that, says now.
     *
     * @param volume the volume as it is now
     * @throws BadVolumeException when neither says so
     */
    public static SectorMap ofRepaired(FatVolume repaired, BlockDevice volume) throws IOException {
        VolumeBytes bytes = new VolumeBytes(volume, BootSector.LENGTH);
        Geometry wanted = repaired.geometry();
        long backup = (long) wanted.backupBootSector() * wanted.bytesPerSector();
        for (long at : new long[] {0, backup}) {
            if (isLaidOutAs(wanted, bytes.read(at, BootSector.LENGTH))) {
                return new SectorMap(wanted);
            }
        }
        throw new BadVolumeException("the repair would lay the volume out as neither of its boot sectors says");
    }

    private static boolean isLaidOutAs(Geometry wanted, byte[] sector) {
        try {
            return BootSector.read(sector).hasLayoutOf(wanted);
        } catch (BadVolumeException e) {
            return false;
        }
    }

    /**
     * What is wrong with a change of one sector, as a clause; nothing where all is as it may be.
     *
     * @param ofRepair whether it is a part of a repair
     * @param backwards whether it undoes such a part
     */
    public Optional<String> fault(SectorChange change, boolean ofRepair, boolean backwards) {
        long at = change.offset();
        int unit = geometry.bytesPerSector();
        if (change.after().length != unit || at < 0 || at % unit != 0) {
            return Optional.of("is not one sector of the volume");
        }
        if (at > geometry.length() - unit) {
            return Optional.of("lies past the end of the volume");
        }
        if (!isOf(change.kind(), at)) {
            return Optional.of("is not a place of its kind (" + change.kind().words() + ")");
        }
        return ofRepair ? faultOfRepair(change, backwards) : faultOfFiles(change);
    }

    private boolean isOf(SectorKind kind, long at) {
        long unit = geometry.bytesPerSector();
        boolean fixedRoot = at >= geometry.rootStart() && at < geometry.dataStart();
        long dataEnd =
                geometry.clusterStart(Geometry.FIRST_CLUSTER) + geometry.clusterCount() * geometry.bytesPerCluster();
        boolean data = at >= geometry.dataStart() && at < dataEnd;
        return switch (kind) {
            case BOOT_SECTOR -> at == 0 || geometry.backupBootSector() != 0 && at == geometry.backupBootSector() * unit;
            case FS_INFO -> geometry.fsInfoSector() != 0 && at == geometry.fsInfoSector() * unit;
            case FAT -> at >= geometry.fatStart(0) && at < geometry.rootStart();
            case DIRECTORY -> fixedRoot || data;
            case DATA -> data;
        };
    }

    /** A change of files leaves boot sectors and the head of each FAT copy alone, and of FSInfo all but its hints. */
    private Optional<String> faultOfFiles(SectorChange change) {
        return switch (change.kind()) {
            case BOOT_SECTOR -> Optional.of("is a boot sector, which only a repair touches");
            case FAT ->
                differs(change, 0, headBytes(change.offset()))
                        ? Optional.of("holds the head of the FAT, which only a repair touches")
                        : Optional.empty();
            case FS_INFO ->
                differs(change, 0, FsInfo.FREE_COUNT_OFFSET)
                                || differs(change, FS_INFO_HINTS_END, change.after().length)
                        ? Optional.of("changes more of FSInfo than its hints")
                        : Optional.empty();
            case DIRECTORY, DATA -> Optional.empty();
        };
    }

    /** A repair leaves a sound boot sector, and is undone from one. */
    private Optional<String> faultOfRepair(SectorChange change, boolean backwards) {
        boolean sound = change.kind() != SectorKind.BOOT_SECTOR
                || isLaidOutAs(geometry, backwards ? change.before() : change.after());
        return sound ? Optional.empty() : Optional.of("is to be no boot sector of this volume");
    }

    /** Bytes at the start of the sector that belong to a FAT copy's first two entries. */
    private int headBytes(long at) {
        return (at - geometry.fatStart(0)) % geometry.fatLength() == 0
                ? (int) (Geometry.FIRST_CLUSTER * geometry.type().bits() / 8)
                : 0;
    }

    private static boolean differs(SectorChange change, int from, int to) {
        for (int i = from; i < to; i++) {
            if (change.before()[i] != change.after()[i]) {
                return true;
            }
        }
        return false;
    }
}
