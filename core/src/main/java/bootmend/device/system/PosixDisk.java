package bootmend.device.system;

import bootmend.ReportedIOException;
import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;
import java.io.IOException;
import java.nio.ByteBuffer;

/**
 * A raw disk node opened through the system's C library, for a system on which Java's own sync does not work on disks.
 *
 * <p>What differs between systems is behind {@link Control}. Reads and writes are tried against a loop device in the tests;
 * against the system it is for, never.
 */
final class PosixDisk implements RawFile {

    /** The same on all systems that name disks so. Sources: the pages open(2), flock(2), and intro(2) for the errors. */
    private static final int READ_ONLY = 0;

    private static final int READ_WRITE = 2;
    private static final int LOCK_EXCLUSIVE = 2;
    private static final int LOCK_WITHOUT_WAITING = 4;
    private static final int EINTR = 4;
    /** Bytes moved in one call. No source: a bound for the memory beside Java's. */
    private static final int MOST = 1 << 20;

    /** The system's C library; the variable arguments of two of them are passed in another way on some machines. */
    interface CLibrary extends Library {
        int open(String path, int flags, Object... mode) throws LastErrorException;

        int close(int descriptor) throws LastErrorException;

        NativeLong pread(int descriptor, Pointer into, NativeLong length, long offset) throws LastErrorException;

        NativeLong pwrite(int descriptor, Pointer from, NativeLong length, long offset) throws LastErrorException;

        int fsync(int descriptor) throws LastErrorException;

        int flock(int descriptor, int operation) throws LastErrorException;

        int ioctl(int descriptor, NativeLong request, Object... argument) throws LastErrorException;
    }

    /** What one system offers beside reading and writing. */
    interface Control {

        /** Has the disk itself write what it was given, after fsync has given it everything. */
        void syncMedium(CLibrary library, int descriptor) throws LastErrorException;

        /** Bytes; 0 where the disk does not tell. */
        long size(CLibrary library, int descriptor);

        /** Whether the error means that this kind of file does not offer what was asked for. */
        boolean isNotOffered(int error);

        /** Whether the error means that somebody else has the lock. */
        boolean isLocked(int error);
    }

    private final CLibrary library;
    private final Control control;
    private final int descriptor;
    private boolean open = true;

    private PosixDisk(CLibrary library, Control control, int descriptor) {
        this.library = library;
        this.control = control;
        this.descriptor = descriptor;
    }

    static CLibrary load() throws IOException {
        try {
            return Native.load("c", CLibrary.class);
        } catch (LinkageError e) {
            throw new ReportedIOException(HelperLibrary.missing(e));
        }
    }

    /** @throws LastErrorException with the system's own number of what went wrong */
    static PosixDisk open(CLibrary library, Control control, String device, boolean change) {
        return new PosixDisk(library, control, library.open(device, change ? READ_WRITE : READ_ONLY));
    }

    @Override
    public int read(ByteBuffer dest, long position) throws IOException {
        int length = Math.min(dest.remaining(), MOST);
        if (length == 0) {
            return 0;
        }
        try (Memory memory = new Memory(length)) {
            int n = again(() -> library.pread(descriptor, memory, new NativeLong(length), position)
                    .intValue());
            dest.put(memory.getByteBuffer(0, Math.max(0, n)));
            return n;
        }
    }

    @Override
    public int write(ByteBuffer src, long position) throws IOException {
        int length = Math.min(src.remaining(), MOST);
        if (length == 0) {
            return 0;
        }
        try (Memory memory = new Memory(length)) {
            memory.getByteBuffer(0, length).put(src.duplicate().limit(src.position() + length));
            int n = again(() -> library.pwrite(descriptor, memory, new NativeLong(length), position)
                    .intValue());
            src.position(src.position() + Math.max(0, n));
            return n;
        }
    }

    @Override
    public void sync() throws IOException {
        again(() -> library.fsync(descriptor));
        again(() -> {
            control.syncMedium(library, descriptor);
            return 0;
        });
    }

    @Override
    public long size() {
        return control.size(library, descriptor);
    }

    @Override
    public boolean lock() throws IOException {
        try {
            library.flock(descriptor, LOCK_EXCLUSIVE | LOCK_WITHOUT_WAITING);
            return true;
        } catch (LastErrorException e) {
            if (control.isLocked(e.getErrorCode())) {
                return false;
            }
            if (control.isNotOffered(e.getErrorCode())) {
                return true;
            }
            throw new IOException(e.getMessage(), e);
        }
    }

    @Override
    public boolean isOpen() {
        return open;
    }

    @Override
    public void close() throws IOException {
        if (open) {
            open = false;
            try {
                library.close(descriptor);
            } catch (LastErrorException e) {
                throw new IOException(e.getMessage(), e);
            }
        }
    }

    @FunctionalInterface
    private interface Call {
        int run() throws LastErrorException;
    }

    /** A call that a signal broke off did nothing and is made again. */
    private static int again(Call call) throws IOException {
        while (true) {
            try {
                return call.run();
            } catch (LastErrorException e) {
                if (e.getErrorCode() != EINTR) {
                    throw new IOException(e.getMessage(), e);
                }
            }
        }
    }
}
