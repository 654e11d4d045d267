package bootmend.device;

import bootmend.CardException;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.TreeMap;

/** Lets through to a device only writes that lie wholly inside runs of bytes named beforehand. */
public final class WriteGuard implements BlockDevice {

    private final BlockDevice device;
    private final TreeMap<Long, Integer> allowed;

    /** @param allowed start of each run that may be written, to its length in bytes */
    public WriteGuard(BlockDevice device, Map<Long, Integer> allowed) {
        this.device = device;
        this.allowed = new TreeMap<>(allowed);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        Map.Entry<Long, Integer> run = allowed.floorEntry(offset);
        if (run == null || src.remaining() > run.getValue() - (offset - run.getKey())) {
            throw CardException.refused(
                    "a write of " + src.remaining() + " bytes at byte " + offset + " stands in no plan, so it was not made",
                    "This is a fault in bootmend; the card is as it was at that place. Please report it.");
        }
        device.write(offset, src);
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        device.read(offset, dest);
    }

    @Override
    public long getSize() throws IOException {
        return device.getSize();
    }

    @Override
    public void flush() throws IOException {
        device.flush();
    }

    @Override
    public int getSectorSize() throws IOException {
        return device.getSectorSize();
    }

    @Override
    public void close() throws IOException {
        device.close();
    }

    @Override
    public boolean isClosed() {
        return device.isClosed();
    }

    @Override
    public boolean isReadOnly() {
        return device.isReadOnly();
    }
}
