package bootmend.device.system;

import bootmend.CardException;
import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import java.io.IOException;

/**
 * A Linux block device that is opened exclusively: a mount of it, or of a part of it, and any other exclusive opener is
 * refused by the kernel until this is closed.
 *
 * <p>Sources: open(2), "O_EXCL" with block devices; posix_fadvise(2); the kernel's uapi headers linux/fs.h (BLKFLSBUF),
 * asm-generic/fcntl.h and asm-generic/errno-base.h for the numbers.
 */
final class LinuxHold implements DiskHold {

    private static final int O_RDWR = 2;
    private static final int O_EXCL = 0x80;
    private static final int O_CLOEXEC = 0x80000;
    private static final int BLKFLSBUF = 0x1261;
    private static final int POSIX_FADV_DONTNEED = 4;

    private static final int EACCES = 13;
    private static final int EBUSY = 16;
    private static final int EROFS = 30;

    /** The system's C library. */
    interface CLibrary extends Library {
        int open(String path, int flags) throws LastErrorException;

        int close(int descriptor) throws LastErrorException;

        int ioctl(int descriptor, NativeLong request, NativeLong argument) throws LastErrorException;

        int posix_fadvise(int descriptor, NativeLong offset, NativeLong length, int advice);
    }

    private final CLibrary library;
    private final int descriptor;
    private boolean closed;

    private LinuxHold(CLibrary library, int descriptor) {
        this.library = library;
        this.descriptor = descriptor;
    }

    static LinuxHold of(String device) throws CardException {
        CLibrary library = load();
        try {
            return new LinuxHold(library, library.open(device, O_RDWR | O_EXCL | O_CLOEXEC));
        } catch (LastErrorException e) {
            throw refused(e);
        }
    }

    private static CLibrary load() throws CardException {
        try {
            return Native.load("c", CLibrary.class);
        } catch (LinkageError e) {
            throw HelperLibrary.missing(e);
        }
    }

    private static CardException refused(LastErrorException e) {
        return switch (e.getErrorCode()) {
            case EBUSY ->
                CardException.refused(
                        "it is in use: another program holds it for itself alone",
                        "Unmount or detach it, or end that program, leave the card in its reader, then try again.",
                        e);
            case EROFS -> ChangeRules.writeProtected(false);
            case EACCES ->
                CardException.refused(
                        "you have no right to write to it",
                        "Check the card's lock tab and your rights to the device, or name the folder where its boot "
                                + "partition is mounted.",
                        e);
            default ->
                CardException.refused(
                        "it could not be held against other programs (" + e.getMessage() + ")",
                        "Check that the card sits firmly in its reader, then try again.",
                        e);
        };
    }

    /** Where the right to have the device forget its buffers is missing, the system is asked to drop its pages. */
    @Override
    public void dropCache() {
        try {
            library.ioctl(descriptor, new NativeLong(BLKFLSBUF), new NativeLong(0));
        } catch (LastErrorException e) {
            library.posix_fadvise(descriptor, new NativeLong(0), new NativeLong(0), POSIX_FADV_DONTNEED);
        }
    }

    /** The kernel lets go of the device even where it reports an error; see close(2), "Dealing with error returns". */
    @Override
    public void close() throws IOException {
        if (!closed) {
            closed = true;
            try {
                library.close(descriptor);
            } catch (LastErrorException e) {
                throw new IOException("the system reported an error when it let go of the disk: " + e.getMessage(), e);
            }
        }
    }
}
