package bootmend.fat;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.LinkedHashMap;
import java.util.Map;

/** Reads bytes of a volume, and keeps the few sectors of the table read last so that a chain costs one read a sector. */
public final class VolumeBytes {

    private static final int KEPT_SECTORS = 64;

    private final BlockDevice volume;
    private final int sectorSize;
    private final Map<Long, byte[]> kept = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, byte[]> eldest) {
            return size() > KEPT_SECTORS;
        }
    };

    /** The one asked for last; entries of a chain mostly follow each other. */
    private long latestOffset = -1;

    private byte[] latest;

    public VolumeBytes(BlockDevice volume, int sectorSize) {
        this.volume = volume;
        this.sectorSize = sectorSize;
    }

    /** Fresh bytes from the device. */
    public byte[] read(long offset, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length);
        volume.read(offset, buffer);
        return buffer.array();
    }

    /** The sector that starts at byte {@code offset}, kept from an earlier read where there was one; not to be changed. */
    public byte[] sector(long offset) throws IOException {
        if (offset == latestOffset) {
            return latest;
        }
        byte[] sector = kept.get(offset);
        if (sector == null) {
            sector = read(offset, sectorSize);
            kept.put(offset, sector);
        }
        latestOffset = offset;
        latest = sector;
        return sector;
    }

    BlockDevice device() {
        return volume;
    }

    public long size() throws IOException {
        return volume.getSize();
    }
}
