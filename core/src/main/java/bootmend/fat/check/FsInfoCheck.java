package bootmend.fat.check;

import bootmend.fat.FatType;
import bootmend.fat.FsInfo;
import bootmend.fat.Geometry;
import bootmend.fat.VolumeBytes;
import bootmend.finding.Finding;
import bootmend.finding.Place;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Compares a FAT32 volume's FSInfo with its FAT.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT32 FSInfo Sector Structure and Backup Boot
 * Sector" (FFFFFFFF says that a value is not known).
 *
 * @param present whether the volume should have an FSInfo that can be read at all
 * @param info what it holds, nothing where its signatures are wrong
 */
record FsInfoCheck(boolean present, Optional<FsInfo> info, long free, Geometry geometry) {

    static final long UNKNOWN = 0xFFFFFFFFL;

    static FsInfoCheck of(VolumeBytes bytes, Geometry geometry, long free) throws IOException {
        boolean present = geometry.type() == FatType.FAT32 && geometry.fsInfoSector() != 0;
        return new FsInfoCheck(present, FsInfo.read(bytes, geometry), free, geometry);
    }

    boolean isCountWrong() {
        return info.isPresent()
                && info.get().freeCount() != UNKNOWN
                && info.get().freeCount() != free;
    }

    boolean isHintWrong() {
        return info.isPresent()
                && info.get().nextFree() != UNKNOWN
                && !info.get().knowsNextFree(geometry);
    }

    List<Finding> findings() {
        if (!present) {
            return List.of();
        }
        if (info.isEmpty()) {
            return found("its signatures are missing");
        }
        if (isCountWrong()) {
            return found("it counts " + Counted.of(info.get().freeCount(), "free cluster") + ", the FAT has " + free);
        }
        return isHintWrong() ? found("its hint where to look for a free cluster points past the end") : List.of();
    }

    private static List<Finding> found(String what) {
        return List.of(VolumeFault.FS_INFO.at(Place.Region.FS_INFO, what));
    }
}
