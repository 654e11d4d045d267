package bootmend.device.system;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;

/** An open file or disk as its system gives it: some take whole sectors only, and any may take or give less than was asked. */
interface RawFile extends Closeable {

    /** @return how many bytes were read from {@code position} on; 0 or less at the end */
    int read(ByteBuffer dest, long position) throws IOException;

    /** @return how many bytes were written from {@code position} on */
    int write(ByteBuffer src, long position) throws IOException;

    /** Returns when everything that was written is on the medium, past every cache that the system knows of. */
    void sync() throws IOException;

    /** Bytes; 0 where the system does not tell. */
    long size() throws IOException;

    /**
     * Keeps every other bootmend from changing it until it is closed.
     *
     * @return false where another has done so
     * @throws IOException where that cannot be had at all
     */
    boolean lock() throws IOException;

    boolean isOpen();
}
