package bootmend.device.packed;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.OptionalLong;
import org.tukaani.xz.SeekableFileInputStream;
import org.tukaani.xz.SeekableXZInputStream;

/** An xz file, which has an index of its blocks at its end and can be unpacked from each of them on. */
final class XzContent implements PackedContent {

    /** KiB; the packer's strongest preset needs some 65 MiB to unpack. Source: xz(1), "Compression preset level options". */
    private static final int MOST_MEMORY = 160 * 1024;

    private final SeekableFileInputStream file;
    private final SeekableXZInputStream xz;

    private XzContent(SeekableFileInputStream file, SeekableXZInputStream xz) {
        this.file = file;
        this.xz = xz;
    }

    static XzContent open(Path path) throws IOException {
        SeekableFileInputStream file = new SeekableFileInputStream(path.toFile());
        try {
            return new XzContent(file, new SeekableXZInputStream(file, MOST_MEMORY));
        } catch (IOException | RuntimeException e) {
            file.close();
            throw e;
        }
    }

    @Override
    public OptionalLong claimedSize() {
        return OptionalLong.of(xz.length());
    }

    @Override
    public long beginBefore(long offset) {
        return offset >= xz.length() ? 0 : xz.getBlockPos(xz.getBlockNumber(offset));
    }

    @Override
    public InputStream from(long begin) throws IOException {
        xz.seek(begin);
        return new FilterInputStream(xz) {
            @Override
            public void close() {
                // The next stream is the same one, from another place.
            }
        };
    }

    @Override
    public void close() throws IOException {
        xz.close();
        file.close();
    }
}
