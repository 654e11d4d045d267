package bootmend.device;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;

/** One partition of a device, seen as a device that starts at 0; closing it leaves the device open. */
public final class PartitionWindow extends ForwardingDevice {

    private final long start;
    private final long size;
    private boolean closed;

    /**
     * @param start first byte of the partition on {@code device}
     * @param length bytes of the partition; the part that lies past the device's end is cut away
     */
    public PartitionWindow(BlockDevice device, long start, long length) throws IOException {
        super(device);
        this.start = start;
        OutsideDeviceException.unlessInside(start, 0, device().getSize());
        this.size = Math.min(Math.max(0, length), device().getSize() - start);
    }

    /** First byte of this window on the device below. */
    public long start() {
        return start;
    }

    @Override
    public long getSize() {
        return size;
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        OutsideDeviceException.unlessInside(offset, dest.remaining(), size);
        device().read(start + offset, dest);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        OutsideDeviceException.unlessInside(offset, src.remaining(), size);
        device().write(start + offset, src);
    }

    @Override
    public void close() {
        closed = true;
    }

    @Override
    public boolean isClosed() {
        return closed || device().isClosed();
    }
}
