package bootmend.device.packed;

import io.airlift.compress.zstd.ZstdInputStream;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalLong;
import java.util.zip.GZIPInputStream;

/**
 * A gzip or zstd file: one way through, from the start.
 *
 * <p>How long it comes out is not asked: a gzip file ends with the length of its last member modulo 2^32 (RFC 1952,
 * section 2.3.1), and a zstd frame may or may not say (RFC 8878, section 3.1.1.1.4).
 */
final class StreamContent implements PackedContent {

    private static final int BUFFER = 1 << 16;

    private final Path file;
    private final Decoder decoder;
    private InputStream open;

    /** Unpacks a stream. */
    @FunctionalInterface
    private interface Decoder {
        InputStream over(InputStream packed) throws IOException;
    }

    private StreamContent(Path file, Decoder decoder) {
        this.file = file;
        this.decoder = decoder;
    }

    static StreamContent gzip(Path file) {
        return new StreamContent(file, packed -> new GZIPInputStream(packed, BUFFER));
    }

    static StreamContent zstd(Path file) {
        return new StreamContent(file, ZstdInputStream::new);
    }

    @Override
    public OptionalLong claimedSize() {
        return OptionalLong.empty();
    }

    @Override
    public long beginBefore(long offset) {
        return 0;
    }

    @Override
    public InputStream from(long begin) throws IOException {
        close();
        open = new BufferedInputStream(Files.newInputStream(file), BUFFER);
        return decoder.over(open);
    }

    @Override
    public void close() throws IOException {
        if (open != null) {
            open.close();
        }
    }
}
