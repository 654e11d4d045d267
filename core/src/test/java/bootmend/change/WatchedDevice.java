package bootmend.change;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;

/** A device that asks before each write whether it is to be passed on. */
final class WatchedDevice implements BlockDevice {

    /** Looks at one write; returns whether it reaches the disk. */
    @FunctionalInterface
    interface Watcher {
        boolean write(int number, long offset) throws IOException;
    }

    private final BlockDevice device;
    private final Watcher watcher;
    private int writes;

    WatchedDevice(BlockDevice device, Watcher watcher) {
        this.device = device;
        this.watcher = watcher;
    }

    @Override
    public void write(long offset, ByteBuffer source) throws IOException {
        if (watcher.write(writes++, offset)) {
            device.write(offset, source);
        }
    }

    @Override
    public void read(long offset, ByteBuffer target) throws IOException {
        device.read(offset, target);
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
