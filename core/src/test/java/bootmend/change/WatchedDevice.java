package bootmend.change;

import bootmend.device.ForwardingDevice;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;

/** A device that asks before each write whether it is to be passed on. */
final class WatchedDevice extends ForwardingDevice {

    /** Looks at one write; returns whether it reaches the disk. */
    @FunctionalInterface
    interface Watcher {
        boolean write(int number, long offset) throws IOException;
    }

    private final Watcher watcher;
    private int writes;

    WatchedDevice(BlockDevice device, Watcher watcher) {
        super(device);
        this.watcher = watcher;
    }

    @Override
    public void write(long offset, ByteBuffer source) throws IOException {
        if (watcher.write(writes++, offset)) {
            super.write(offset, source);
        }
    }
}
