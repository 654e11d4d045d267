package bootmend.fat;

import java.util.Optional;

/** What each sector of a volume is for, by its place; every place is in bytes from the volume's start. */
public final class SectorMap {

    private static final int FS_INFO_HINTS_END = FsInfo.NEXT_FREE_OFFSET + Integer.BYTES;

    private final Geometry geometry;

    private SectorMap(Geometry geometry) {
        this.geometry = geometry;
    }

    public static SectorMap of(FatVolume volume) {
        return new SectorMap(volume.geometry());
    }

    /** The first place that is wrong with a change of one sector, as a clause; nothing where all is as it may be. */
    public Optional<String> fault(SectorChange change, boolean ofRepair) {
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
        return ofRepair ? faultOfRepair(change) : faultOfFiles(change);
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

    /** A boot sector comes from a sound one, or, when the repair is undone, goes back from one. */
    private Optional<String> faultOfRepair(SectorChange change) {
        boolean sound = change.kind() != SectorKind.BOOT_SECTOR || isSound(change.after()) || isSound(change.before());
        return sound ? Optional.empty() : Optional.of("is no boot sector of this volume, before or after");
    }

    private boolean isSound(byte[] sector) {
        try {
            return BootSector.read(sector).hasLayoutOf(geometry);
        } catch (BadVolumeException e) {
            return false;
        }
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
