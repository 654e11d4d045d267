package bootmend.device.system;

import bootmend.device.CachedDevice;
import bootmend.device.OutsideDeviceException;
import de.waldheinz.fs.BlockDevice;
import de.waldheinz.fs.ReadOnlyException;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;

/**
 * An image file or raw disk of which any run of bytes can be read and written.
 *
 * <p>Every access to the file below begins and ends at a multiple of {@code alignment}, also after one that came out short,
 * because raw disks of some systems accept nothing else. {@link #flush()} syncs to the medium.
 */
final class SectorDevice implements BlockDevice, CachedDevice {

    private final RawFile file;
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
    SectorDevice(RawFile file, long size, int sectorSize, int alignment, boolean readOnly, DiskHold hold) {
        this.hold = hold;
        this.file = file;
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
        file.sync();
    }

    /** The file first, so that the hold lasts as long as anything can be written. */
    @Override
    public void close() throws IOException {
        try (hold;
                file) {
            return;
        }
    }

    @Override
    public void dropCache() throws IOException {
        hold.dropCache();
    }

    @Override
    public boolean isClosed() {
        return !file.isOpen();
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
        int first = dest.position();
        while (dest.hasRemaining()) {
            long at = offset + dest.position() - first;
            int before = dest.position();
            int n = file.read(dest, at);
            if (!goOn(dest, before, n)) {
                throw new EOFException(
                        "the medium ended at byte " + (at + Math.max(0, n)) + ", before its stated size of " + size);
            }
        }
    }

    private void writeFully(long offset, ByteBuffer src) throws IOException {
        int first = src.position();
        while (src.hasRemaining()) {
            long at = offset + src.position() - first;
            int before = src.position();
            int n = file.write(src, at);
            if (!goOn(src, before, n)) {
                throw new EOFException("the medium took no more bytes at " + (at + Math.max(0, n)));
            }
        }
    }

    /** Goes back to where a whole sector begins after an access that ended within one; false where none was whole. */
    private boolean goOn(ByteBuffer buffer, int before, int n) {
        if (n > 0 && buffer.hasRemaining()) {
            buffer.position(before + n - n % alignment);
        }
        return n > 0 && buffer.position() > before;
    }
}
