package bootmend.device.system;

import com.sun.jna.LastErrorException;
import com.sun.jna.NativeLong;
import com.sun.jna.ptr.IntByReference;
import com.sun.jna.ptr.LongByReference;

/**
 * What macOS offers on a raw disk node. On such a node its call for a full sync of a file fails with ENOTTY; what reaches
 * the medium there is fsync followed by the request to synchronise the disk's cache.
 *
 * <p>Sources: the kernel's bsd/sys/disk.h (DKIOCSYNCHRONIZECACHE, DKIOCGETBLOCKSIZE, DKIOCGETBLOCKCOUNT) and bsd/sys/errno.h;
 * the pages fsync(2) and fcntl(2), "F_FULLFSYNC". Values from memory; never run on that system.
 */
final class MacControl implements PosixDisk.Control {

    /** {@code _IO('d', 22)}. */
    static final long SYNCHRONIZE_CACHE = 0x20006416L;
    /** {@code _IOR('d', 24, uint32_t)}. */
    static final long GET_BLOCK_SIZE = 0x40046418L;
    /** {@code _IOR('d', 25, uint64_t)}. */
    static final long GET_BLOCK_COUNT = 0x40086419L;

    static final int EPERM = 1;
    static final int EACCES = 13;
    static final int EBUSY = 16;
    static final int ENODEV = 19;
    static final int EROFS = 30;
    private static final int EWOULDBLOCK = 35;
    private static final int ENOTSUP = 45;
    private static final int EOPNOTSUPP = 102;

    /** A disk that does not know the request has no cache that could be asked to write. */
    @Override
    public void syncMedium(PosixDisk.CLibrary library, int descriptor) {
        try {
            library.ioctl(descriptor, new NativeLong(SYNCHRONIZE_CACHE));
        } catch (LastErrorException e) {
            if (!isNotOffered(e.getErrorCode())) {
                throw e;
            }
        }
    }

    @Override
    public long size(PosixDisk.CLibrary library, int descriptor) {
        IntByReference size = new IntByReference();
        LongByReference count = new LongByReference();
        try {
            library.ioctl(descriptor, new NativeLong(GET_BLOCK_SIZE), size);
            library.ioctl(descriptor, new NativeLong(GET_BLOCK_COUNT), count);
        } catch (LastErrorException e) {
            return 0;
        }
        long most = Long.MAX_VALUE / Math.max(1, size.getValue());
        return size.getValue() > 0 && count.getValue() > 0 && count.getValue() <= most
                ? size.getValue() * count.getValue()
                : 0;
    }

    @Override
    public boolean isNotOffered(int error) {
        return error == ENOTSUP || error == EOPNOTSUPP;
    }

    @Override
    public boolean isLocked(int error) {
        return error == EWOULDBLOCK;
    }
}
