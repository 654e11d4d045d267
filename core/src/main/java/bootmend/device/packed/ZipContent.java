package bootmend.device.packed;

import bootmend.CardException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Set;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.archivers.zip.ZipMethod;

/** The one image in a zip file. */
final class ZipContent implements PackedContent {

    private static final Set<ZipMethod> METHODS =
            Set.of(ZipMethod.STORED, ZipMethod.DEFLATED, ZipMethod.ENHANCED_DEFLATED, ZipMethod.BZIP2);
    private static final List<String> IMAGES = List.of(".img", ".bin", ".raw");

    private final ZipFile zip;
    private final ZipArchiveEntry image;
    private InputStream open;

    private ZipContent(ZipFile zip, ZipArchiveEntry image) {
        this.zip = zip;
        this.image = image;
    }

    static ZipContent open(Path file) throws CardException, IOException {
        ListLimit limited = new ListLimit(FileChannel.open(file, StandardOpenOption.READ));
        try {
            ZipFile zip = ZipFile.builder()
                    .setSeekableByteChannel(limited)
                    .setIgnoreLocalFileHeader(true)
                    .get();
            limited.lift();
            return new ZipContent(zip, image(zip));
        } catch (CardException | IOException | RuntimeException e) {
            limited.close();
            throw e;
        }
    }

    private static ZipArchiveEntry image(ZipFile zip) throws CardException {
        List<ZipArchiveEntry> files = new ArrayList<>();
        List<ZipArchiveEntry> images = new ArrayList<>();
        for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
            if (!entry.isDirectory()) {
                files.add(entry);
                String name = entry.getName().toLowerCase(Locale.ROOT);
                if (IMAGES.stream().anyMatch(name::endsWith)) {
                    images.add(entry);
                }
            }
        }
        List<ZipArchiveEntry> found = images.isEmpty() ? files : images;
        if (found.size() != 1) {
            throw CardException.unreadable(
                    "the zip file holds " + found.size() + " files that could be the image",
                    "Unpack it and name the image.");
        }
        ZipArchiveEntry only = found.get(0);
        if (only.getGeneralPurposeBit().usesEncryption()) {
            throw CardException.unreadable(
                    "the image in the zip file is encrypted", "Unpack it with its password first.");
        }
        if (!METHODS.contains(ZipMethod.getMethodByCode(only.getMethod()))) {
            throw CardException.unreadable(
                    "the image in the zip file is packed by method " + only.getMethod() + ", which is not known here",
                    "Unpack it with the program that packed it.");
        }
        return only;
    }

    @Override
    public OptionalLong claimedSize() {
        return OptionalLong.of(image.getSize());
    }

    @Override
    public long beginBefore(long offset) {
        return 0;
    }

    @Override
    public InputStream from(long begin) throws IOException {
        if (open != null) {
            open.close();
        }
        open = zip.getInputStream(image);
        return open;
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }

    /** Keeps a zip file's list of files from taking any amount of memory: it is read whole before anything else. */
    private static final class ListLimit implements SeekableByteChannel {

        /** An image and what may lie beside it need some hundred bytes; no source, a bound against hostile files. */
        private static final long MOST_BYTES = 4 << 20;

        private final SeekableByteChannel channel;
        private long left = MOST_BYTES;

        ListLimit(SeekableByteChannel channel) {
            this.channel = channel;
        }

        void lift() {
            left = Long.MAX_VALUE;
        }

        @Override
        public int read(ByteBuffer dst) throws IOException {
            int n = channel.read(dst);
            left -= Math.max(0, n);
            if (left < 0) {
                throw new IOException("its list of files is longer than that of any zip file with one image");
            }
            return n;
        }

        @Override
        public int write(ByteBuffer src) throws IOException {
            throw new IOException("a packed image is not written to");
        }

        @Override
        public long position() throws IOException {
            return channel.position();
        }

        @Override
        public SeekableByteChannel position(long position) throws IOException {
            channel.position(position);
            return this;
        }

        @Override
        public long size() throws IOException {
            return channel.size();
        }

        @Override
        public SeekableByteChannel truncate(long size) throws IOException {
            throw new IOException("a packed image is not written to");
        }

        @Override
        public boolean isOpen() {
            return channel.isOpen();
        }

        @Override
        public void close() throws IOException {
            channel.close();
        }
    }
}
