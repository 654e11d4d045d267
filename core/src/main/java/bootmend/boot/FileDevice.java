package bootmend.boot;

import bootmend.fat.FileBytes;
import de.waldheinz.fs.BlockDevice;
import de.waldheinz.fs.ReadOnlyException;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;

/** A file that holds a disk image, to be read as a disk. */
final class FileDevice implements BlockDevice {

    private static final int SECTOR = 512;

    private final FileBytes file;
    private boolean closed;

    FileDevice(FileBytes file) {
        this.file = file;
    }

    @Override
    public long getSize() {
        return file.size() / SECTOR * SECTOR;
    }

    @Override
    public void read(long offset, ByteBuffer target) throws IOException {
        byte[] bytes = file.read(offset, target.remaining());
        if (bytes.length < target.remaining()) {
            throw new EOFException("the image file ends or cannot be read at byte " + (offset + bytes.length));
        }
        target.put(bytes);
    }

    @Override
    public void write(long offset, ByteBuffer source) throws ReadOnlyException {
        throw new ReadOnlyException();
    }

    @Override
    public void flush() {
        // Nothing is ever written.
    }

    @Override
    public int getSectorSize() {
        return SECTOR;
    }

    @Override
    public void close() {
        closed = true;
    }

    @Override
    public boolean isClosed() {
        return closed;
    }

    @Override
    public boolean isReadOnly() {
        return true;
    }
}
