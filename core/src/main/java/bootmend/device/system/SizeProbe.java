package bootmend.device.system;

import java.io.IOException;
import java.nio.ByteBuffer;

/** Finds where a disk ends of which the system does not tell: the last sector that can be read, found by halving. */
final class SizeProbe {

    /** Past what any disk has; no source, a bound. */
    private static final int MOST_BITS = 53;

    private final RawFile file;
    private final int sector;

    SizeProbe(RawFile file, int sector) {
        this.file = file;
        this.sector = sector;
    }

    /**
     * Bytes, whole sectors; 0 where there is none. Some hundred reads at most.
     *
     * @throws IOException where not even the first sector can be read
     */
    long size() throws IOException {
        if (read(0) <= 0) {
            return 0;
        }
        long good = 0;
        long bad = 1;
        while (isThere(bad)) {
            good = bad;
            bad *= 2;
            if (bad > (1L << MOST_BITS) / sector) {
                throw new IOException("it has no end that could be found");
            }
        }
        while (bad - good > 1) {
            long middle = good + (bad - good) / 2;
            if (isThere(middle)) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return (good + 1) * sector;
    }

    /** Systems differ in whether a read past the end is an error. */
    private boolean isThere(long number) {
        try {
            return read(number * sector) > 0;
        } catch (IOException e) {
            return false;
        }
    }

    private int read(long position) throws IOException {
        return file.read(ByteBuffer.allocate(sector), position);
    }
}
