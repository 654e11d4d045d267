package bootmend.fat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;

/**
 * The FSInfo sector of a FAT32 volume: two hints about free clusters, either of which may be unknown.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT32 FSInfo Sector Structure and Backup Boot
 * Sector".
 *
 * @param freeCount free clusters, or a value over the cluster count where it is not known
 * @param nextFree where to start looking for a free cluster, or a value off the volume where it is not known
 */
public record FsInfo(long freeCount, long nextFree) {

    static final int FREE_COUNT_OFFSET = 488;
    static final int NEXT_FREE_OFFSET = 492;
    private static final int LEAD_SIGNATURE = 0x41615252;
    private static final int STRUCT_SIGNATURE = 0x61417272;
    private static final int TRAIL_SIGNATURE = 0xAA550000;

    /** The volume's FSInfo, or nothing where it has none or its signatures are wrong. */
    public static Optional<FsInfo> read(VolumeBytes volume, Geometry geometry) throws IOException {
        if (geometry.type() != FatType.FAT32 || geometry.fsInfoSector() == 0) {
            return Optional.empty();
        }
        return parse(volume.read(offset(geometry), BootSector.LENGTH));
    }

    static Optional<FsInfo> parse(byte[] sector) {
        ByteBuffer bytes = ByteBuffer.wrap(sector).order(ByteOrder.LITTLE_ENDIAN);
        if (bytes.getInt(0) != LEAD_SIGNATURE
                || bytes.getInt(484) != STRUCT_SIGNATURE
                || bytes.getInt(508) != TRAIL_SIGNATURE) {
            return Optional.empty();
        }
        return Optional.of(new FsInfo(
                bytes.getInt(FREE_COUNT_OFFSET) & 0xFFFFFFFFL, bytes.getInt(NEXT_FREE_OFFSET) & 0xFFFFFFFFL));
    }

    /** Puts both values and all signatures into a sector and leaves its reserved bytes as they are. */
    void writeTo(byte[] sector) {
        ByteBuffer bytes = ByteBuffer.wrap(sector).order(ByteOrder.LITTLE_ENDIAN);
        bytes.putInt(0, LEAD_SIGNATURE).putInt(484, STRUCT_SIGNATURE).putInt(508, TRAIL_SIGNATURE);
        bytes.putInt(FREE_COUNT_OFFSET, (int) freeCount).putInt(NEXT_FREE_OFFSET, (int) nextFree);
    }

    static long offset(Geometry geometry) {
        return (long) geometry.fsInfoSector() * geometry.bytesPerSector();
    }

    boolean knowsFreeCount(Geometry geometry) {
        return freeCount <= geometry.clusterCount();
    }

    public boolean knowsNextFree(Geometry geometry) {
        return geometry.hasCluster(nextFree);
    }
}
