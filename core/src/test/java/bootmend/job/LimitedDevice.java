package bootmend.job;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;

/** Passes accesses on and fails the test when there are too many of them, or one is too long. */
final class LimitedDevice implements BlockDevice {

    private final BlockDevice device;
    private final long mostAccesses;
    private final int mostBytes;
    private long accesses;

    LimitedDevice(BlockDevice device, long mostAccesses, int mostBytes) {
        this.device = device;
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
        device.read(offset, dest);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        count(src);
        device.write(offset, src);
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
    public void close() {
        // The disk is looked at after the job has closed its card.
    }

    @Override
    public boolean isClosed() {
        return false;
    }

    @Override
    public boolean isReadOnly() {
        return false;
    }
}
