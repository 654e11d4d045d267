package bootmend.device;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;

/** Passes everything on to another device; what stands before a device overrides what it changes. */
public abstract class ForwardingDevice implements BlockDevice, CachedDevice {

    private final BlockDevice device;

    protected ForwardingDevice(BlockDevice device) {
        this.device = device;
    }

    /** The device behind this one. */
    protected final BlockDevice device() {
        return device;
    }

    @Override
    public long getSize() throws IOException {
        return device.getSize();
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        device.read(offset, dest);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        device.write(offset, src);
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
    public void dropCache() throws IOException {
        CachedDevice.drop(device);
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
