package bootmend.operation;

import bootmend.device.ForwardingDevice;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;

/** Passes accesses on and fails the test when there are too many of them, or one is too long. */
final class LimitedDevice extends ForwardingDevice {

    private final long mostAccesses;
    private final int mostBytes;
    private long accesses;

    LimitedDevice(BlockDevice device, long mostAccesses, int mostBytes) {
        super(device);
        this.mostAccesses = mostAccesses;
        this.mostBytes = mostBytes;
    }

    private void count(ByteBuffer buffer) {
        if (++accesses > mostAccesses) {
            throw new AssertionError("more than " + mostAccesses + " accesses");
        }
        if (buffer.remaining() > mostBytes) {
            throw new AssertionError("one access of " + buffer.remaining() + " bytes");
        }
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        count(dest);
        super.read(offset, dest);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        count(src);
        super.write(offset, src);
    }

    @Override
    public void close() {
        // The disk is looked at after the job has closed its card.
    }
}
