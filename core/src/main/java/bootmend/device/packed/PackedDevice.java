package bootmend.device.packed;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.ReportedIOException;
import bootmend.device.OutsideDeviceException;
import de.waldheinz.fs.BlockDevice;
import de.waldheinz.fs.ReadOnlyException;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A packed image as a device that is only read: it is unpacked in memory, forward, no farther than what is asked for.
 *
 * <p>Pages that were read, and some that were passed by, are kept within a bound; a page of zeros, as most of an image
 * is, costs one bit. What is not kept any more is unpacked again. All that is ever unpacked is bounded too, so that a small
 * file that unpacks to anything costs a bounded time.
 *
 * <p>{@link #getSize()} is what the file claims. Where it claims nothing it is {@value #UNKNOWN_SIZE} until the image's end
 * was met; a read past that end throws {@link OutsideDeviceException}.
 */
final class PackedDevice implements BlockDevice, Closeable {

    /** More than any card has, and a multiple of every sector size. */
    static final long UNKNOWN_SIZE = 1L << 50;

    private static final int SECTOR = 512;
    private static final int PAGE = 1 << 16;
    /** Pages kept of those that were read, and as many of those that were passed by: 16 MiB each. */
    private static final int KEPT = 256;
    /** Only of the first 64 GiB is it remembered which pages are zeros. */
    private static final long MOST_ZERO_PAGES = 1L << 20;

    private static final byte[] ZEROS = new byte[PAGE];
    /** Boot partitions end within the first gibibyte; no source, a bound against hostile files. */
    private static final long MOST_UNPACKED = 8L << 30;

    private final PackedContent content;
    private final NextStep.UnpackImage unpacking;
    private final long mostUnpacked;
    private final Map<Long, byte[]> read = new Pages();
    private final Map<Long, byte[]> passed = new Pages();
    private final BitSet zeros = new BitSet();
    private long size;
    private boolean sizeIsSure;
    private InputStream stream;
    private long at;
    private long unpacked;
    private boolean closed;

    private static final class Pages extends LinkedHashMap<Long, byte[]> {
        private static final long serialVersionUID = 1L;

        Pages() {
            super(16, 0.75f, true);
        }

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, byte[]> eldest) {
            return size() > KEPT;
        }
    }

    private PackedDevice(PackedContent content, NextStep.UnpackImage unpacking, long mostUnpacked) throws IOException {
        this.content = content;
        this.unpacking = unpacking;
        this.mostUnpacked = mostUnpacked;
        this.size = content.claimedSize().orElse(UNKNOWN_SIZE);
    }

    /** @throws CardException of kind unreadable where the file is not packed as its name says, or damaged */
    static PackedDevice open(Path file, PackedFormat format) throws CardException, IOException {
        return open(file, format, MOST_UNPACKED);
    }

    /** @param mostUnpacked bytes that may be unpacked, again and again included, before it is given up */
    static PackedDevice open(Path file, PackedFormat format, long mostUnpacked) throws CardException, IOException {
        NextStep.UnpackImage unpacking = format.unpacking(file);
        try {
            return new PackedDevice(content(file, format), unpacking, mostUnpacked);
        } catch (IOException | RuntimeException e) {
            throw damaged(unpacking, e);
        }
    }

    private static PackedContent content(Path file, PackedFormat format) throws CardException, IOException {
        return switch (format) {
            case GZIP -> StreamContent.gzip(file);
            case ZSTD -> StreamContent.zstd(file);
            case XZ -> XzContent.open(file);
            case ZIP -> ZipContent.open(file);
        };
    }

    @Override
    public long getSize() {
        return size;
    }

    boolean hasKnownSize() {
        return size != UNKNOWN_SIZE;
    }

    /** Bytes unpacked since it was opened. */
    long unpacked() {
        return unpacked;
    }

    @Override
    public int getSectorSize() {
        return SECTOR;
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        OutsideDeviceException.unlessInside(offset, dest.remaining(), size);
        if (!hasKnownSize() && offset >= UNKNOWN_SIZE - (1L << 32)) {
            // A look at the card's very end, wherever that is.
            throw new OutsideDeviceException(offset, dest.remaining(), size);
        }
        long from = offset;
        while (dest.hasRemaining()) {
            byte[] page = page(from / PAGE, offset, dest.remaining());
            int start = (int) (from % PAGE);
            int length = Math.min(dest.remaining(), page.length - start);
            if (length <= 0) {
                throw new OutsideDeviceException(offset, dest.remaining(), size);
            }
            dest.put(page, start, length);
            from += length;
        }
    }

    private byte[] page(long number, long offset, int length) throws IOException {
        byte[] kept = kept(number);
        if (kept != null) {
            return kept;
        }
        try {
            byte[] page = unpackTo(number);
            if (page == null) {
                throw new OutsideDeviceException(offset, length, size);
            }
            if (page != ZEROS) {
                passed.remove(number);
                read.put(number, page);
            }
            return page;
        } catch (ReportedIOException | OutsideDeviceException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            throw new ReportedIOException(damaged(unpacking, e));
        }
    }

    private byte[] kept(long number) {
        if (number < MOST_ZERO_PAGES && zeros.get((int) number)) {
            return ZEROS;
        }
        byte[] page = read.get(number);
        if (page == null) {
            page = passed.remove(number);
            if (page != null) {
                read.put(number, page);
            }
        }
        return page;
    }

    /** Unpacks forward up to a page; null where the image ends before it. */
    private byte[] unpackTo(long number) throws IOException {
        long wanted = number * PAGE;
        if (wanted >= size) {
            return null;
        }
        long begin = content.beginBefore(wanted);
        if (stream == null || at > wanted || begin > at) {
            stream = content.from(begin);
            at = begin;
            skipTo(Math.min(wanted, (begin + PAGE - 1) / PAGE * PAGE));
        }
        byte[] page = null;
        while (at <= wanted) {
            long passing = at / PAGE;
            page = next(PAGE);
            if (page.length == 0) {
                return null;
            }
            page = keep(passing, page);
        }
        return page;
    }

    private void skipTo(long place) throws IOException {
        while (at < place && next((int) Math.min(PAGE, place - at)).length > 0) {
            // What lies before the first whole page is not wanted.
        }
    }

    /** The next bytes of the image; fewer at its end. */
    private byte[] next(int length) throws IOException {
        if (unpacked + length > mostUnpacked) {
            throw new ReportedIOException(CardException.unreadable(
                    "over " + (mostUnpacked >> 20) + " MiB would have to be unpacked to read what is " + "asked for",
                    "",
                    unpacking));
        }
        byte[] bytes = stream.readNBytes(length);
        unpacked += bytes.length;
        at += bytes.length;
        if (bytes.length < length) {
            ended();
        }
        return bytes;
    }

    private void ended() throws IOException {
        if (!sizeIsSure) {
            if (hasKnownSize() && at != size) {
                throw new IOException("it unpacks to " + at + " bytes, but says that there are " + size);
            }
            size = at;
            sizeIsSure = true;
        }
    }

    private byte[] keep(long number, byte[] page) {
        if (Arrays.equals(page, ZEROS)) {
            if (number < MOST_ZERO_PAGES) {
                zeros.set((int) number);
            }
            return ZEROS;
        }
        if (!read.containsKey(number)) {
            passed.put(number, page);
        }
        return page;
    }

    private static CardException damaged(NextStep.UnpackImage unpacking, Exception e) {
        Throwable first = e;
        while (first.getCause() != null && first.getCause() != first) {
            first = first.getCause();
        }
        return CardException.unreadable(
                "it is not packed as its name says, or it is damaged (" + first.getMessage() + ")",
                "Where it cannot be unpacked either, fetch the file again.",
                e,
                unpacking);
    }

    @Override
    public void write(long offset, ByteBuffer src) {
        throw new ReadOnlyException();
    }

    @Override
    public void flush() {
        // Nothing was written.
    }

    @Override
    public void close() throws IOException {
        closed = true;
        content.close();
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
