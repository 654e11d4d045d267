package bootmend.device.system;

import bootmend.device.CachedDevice;
import bootmend.device.OutsideDeviceException;
import de.waldheinz.fs.BlockDevice;
import de.waldheinz.fs.ReadOnlyException;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;

/**
 * An image file or raw disk behind a file channel.
 *
 * <p>Reads and writes of any offset and length are widened to whole device sectors where {@code alignment} is over 1,
 * because raw disks of some systems accept nothing else. {@link #flush()} forces data and metadata to the medium.
 */
final class ChannelDevice implements BlockDevice, CachedDevice {

    private final FileChannel channel;
    private final long size;
    private final int sectorSize;
    private final int alignment;
    private final boolean readOnly;
    private final DiskHold hold;

    /**
     * @param size bytes, as the system reports them
     * @param sectorSize bytes per logical sector, a power of two
     * @param alignment 1, or the sector size to which every access is widened
     * @param hold what keeps the disk from others; closed with it
     */
    ChannelDevice(FileChannel channel, long size, int sectorSize, int alignment, boolean readOnly, DiskHold hold) {
        this.hold = hold;
        this.channel = channel;
        this.size = size;
        this.sectorSize = sectorSize;
        this.alignment = alignment;
        this.readOnly = readOnly;
    }

    @Override
    public long getSize() {
        return size;
    }

    @Override
    public int getSectorSize() {
        return sectorSize;
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        int length = dest.remaining();
        OutsideDeviceException.unlessInside(offset, length, size);
        long start = alignDown(offset);
        long end = alignUp(offset + length);
        if (start == offset && end == offset + length) {
            readFully(offset, dest);
            return;
        }
        ByteBuffer whole = ByteBuffer.allocate(Math.toIntExact(end - start));
        readFully(start, whole);
        whole.flip().position(Math.toIntExact(offset - start));
        whole.limit(whole.position() + length);
        dest.put(whole);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        if (readOnly) {
            throw new ReadOnlyException();
        }
        int length = src.remaining();
        OutsideDeviceException.unlessInside(offset, length, size);
        long start = alignDown(offset);
        long end = alignUp(offset + length);
        if (start == offset && end == offset + length) {
            writeFully(offset, src);
            return;
        }
        ByteBuffer whole = ByteBuffer.allocate(Math.toIntExact(end - start));
        readFully(start, whole);
        whole.position(Math.toIntExact(offset - start));
        whole.put(src);
        whole.clear();
        writeFully(start, whole);
    }

    @Override
    public void flush() throws IOException {
        channel.force(true);
    }

    @Override
    public void close() throws IOException {
        try {
            channel.close();
        } finally {
            hold.close();
        }
    }

    @Override
    public void dropCache() throws IOException {
        hold.dropCache();
    }

    @Override
    public boolean isClosed() {
        return !channel.isOpen();
    }

    @Override
    public boolean isReadOnly() {
        return readOnly;
    }

    private long alignDown(long offset) {
        return offset - offset % alignment;
    }

    private long alignUp(long offset) {
        long rest = offset % alignment;
        return rest == 0 ? offset : Math.min(size, offset + alignment - rest);
    }

    private void readFully(long offset, ByteBuffer dest) throws IOException {
        long at = offset;
        while (dest.hasRemaining()) {
            int n = channel.read(dest, at);
            if (n <= 0) {
                throw new EOFException("the medium ended at byte " + at + ", before its stated size of " + size);
            }
            at += n;
        }
    }

    private void writeFully(long offset, ByteBuffer src) throws IOException {
        long at = offset;
        while (src.hasRemaining()) {
            int n = channel.write(src, at);
            if (n <= 0) {
                throw new EOFException("the medium took no more bytes at " + at);
            }
            at += n;
        }
    }
}
