package bootmend.device;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;

/** Passes accesses on until one fails with an I/O error, and fails every access after it, as a pulled card does. */
public final class FaultingDevice extends ForwardingDevice {

    private final long failingRead;
    private final long failingWrite;
    private long reads;
    private long writes;
    private boolean gone;

    private FaultingDevice(BlockDevice device, long failingRead, long failingWrite) {
        super(device);
        this.failingRead = failingRead;
        this.failingWrite = failingWrite;
    }

    /** @param n the read that fails, counted from 1 */
    public static FaultingDevice atRead(BlockDevice device, long n) {
        return new FaultingDevice(device, n, Long.MAX_VALUE);
    }

    /** @param n the write that fails, counted from 1; nothing of it reaches the device */
    public static FaultingDevice atWrite(BlockDevice device, long n) {
        return new FaultingDevice(device, Long.MAX_VALUE, n);
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        reads++;
        failWhen(reads >= failingRead);
        device().read(offset, dest);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        writes++;
        failWhen(writes >= failingWrite);
        device().write(offset, src);
    }

    @Override
    public void flush() throws IOException {
        failWhen(false);
        device().flush();
    }

    private void failWhen(boolean now) throws IOException {
        gone |= now;
        if (gone) {
            throw new IOException("Input/output error");
        }
    }
}
