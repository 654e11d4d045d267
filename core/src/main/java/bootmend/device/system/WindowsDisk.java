package bootmend.device.system;

import bootmend.ReportedIOException;
import com.sun.jna.platform.win32.WinBase;
import com.sun.jna.platform.win32.WinNT;
import com.sun.jna.ptr.IntByReference;
import java.io.IOException;
import java.nio.ByteBuffer;

/**
 * A raw disk or volume of Windows: reads, writes and the flush on one handle, each at a place of its own.
 *
 * <p>Source: the pages of ReadFile, WriteFile (an OVERLAPPED with a handle that is not overlapped gives the place) and
 * FlushFileBuffers. Values from memory; never run on that system, only against recorded answers.
 */
final class WindowsDisk implements RawFile {

    /** {@code ERROR_HANDLE_EOF}, {@code ERROR_SECTOR_NOT_FOUND}, {@code ERROR_INVALID_PARAMETER} past a disk's end. */
    private static final int ERROR_HANDLE_EOF = 38;

    private static final int ERROR_WRITE_PROTECT = 19;
    /** Bytes moved in one call. No source: a bound for the memory beside Java's. */
    private static final int MOST = 1 << 20;

    private final WindowsLibrary kernel;
    private final WinNT.HANDLE handle;
    private boolean open = true;

    WindowsDisk(WindowsLibrary kernel, WinNT.HANDLE handle) {
        this.kernel = kernel;
        this.handle = handle;
    }

    @Override
    public int read(ByteBuffer dest, long position) throws IOException {
        byte[] bytes = new byte[Math.min(dest.remaining(), MOST)];
        IntByReference moved = new IntByReference();
        if (!kernel.ReadFile(handle, bytes, bytes.length, moved, at(position))) {
            int error = kernel.GetLastError();
            if (error == ERROR_HANDLE_EOF) {
                return -1;
            }
            throw new IOException("reading at byte " + position + " failed (error " + error + " of the system)");
        }
        dest.put(bytes, 0, moved.getValue());
        return moved.getValue();
    }

    @Override
    public int write(ByteBuffer src, long position) throws IOException {
        byte[] bytes = new byte[Math.min(src.remaining(), MOST)];
        src.duplicate().get(bytes);
        IntByReference moved = new IntByReference();
        if (!kernel.WriteFile(handle, bytes, bytes.length, moved, at(position))) {
            int error = kernel.GetLastError();
            if (error == ERROR_WRITE_PROTECT) {
                throw new ReportedIOException(ChangeRules.writeProtected(false));
            }
            throw new IOException("writing at byte " + position + " failed (error " + error + " of the system)");
        }
        src.position(src.position() + moved.getValue());
        return moved.getValue();
    }

    private static WinBase.OVERLAPPED at(long position) {
        WinBase.OVERLAPPED place = new WinBase.OVERLAPPED();
        place.Offset = (int) position;
        place.OffsetHigh = (int) (position >>> Integer.SIZE);
        return place;
    }

    @Override
    public void sync() throws IOException {
        if (!kernel.FlushFileBuffers(handle)) {
            throw new IOException("error " + kernel.GetLastError() + " of the system");
        }
    }

    /** The driver is asked for it in another way; see {@link WindowsKernel}. */
    @Override
    public long size() {
        return 0;
    }

    /** The lock on every volume of the disk, held beside this, is the only one that counts there. */
    @Override
    public boolean lock() {
        return true;
    }

    @Override
    public boolean isOpen() {
        return open;
    }

    @Override
    public void close() throws IOException {
        if (open) {
            open = false;
            if (!kernel.CloseHandle(handle)) {
                throw new IOException(
                        "the system reported error " + kernel.GetLastError() + " when it let go of the disk");
            }
        }
    }
}
