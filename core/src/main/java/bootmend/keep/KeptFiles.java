package bootmend.keep;

import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.FileContent;
import bootmend.fat.VolumeSpace;
import bootmend.fat.WrittenTime;
import bootmend.folder.MountedFolder;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/** A file of kept files, read as the boot partition that they come from; a file's bytes count only as the list has them. */
public final class KeptFiles implements BootFiles, Closeable {

    /** No source: more than any boot file; a bound on the memory that one takes. */
    private static final long MOST_FILE_BYTES = 512L << 20;

    private static final int MOST_ENTRIES = 65_536;
    private static final int NAME_AT = 30;
    private static final byte[] ZIP = {'P', 'K', 3, 4};
    private static final int PIECE = 1 << 16;

    private final ZipFile zip;
    private final KeptManifest manifest;
    private final Map<Long, KeptManifest.Entry> byNumber = new HashMap<>();
    private final Map<String, List<DirectoryEntry>> byFolder = new HashMap<>();
    private final Map<Long, String> folders = new HashMap<>();
    private long lastNumber = -1;
    private byte[] last;

    private KeptFiles(ZipFile zip, KeptManifest manifest) throws IOException {
        this.zip = zip;
        this.manifest = manifest;
        if (manifest.files().size() > MOST_ENTRIES) {
            throw new IOException("its list has over " + MOST_ENTRIES + " files");
        }
        long number = 1;
        for (KeptManifest.Entry entry : manifest.files()) {
            if (!MountedFolder.isInsidePath(entry.path()) || entry.bytes() < 0 || entry.bytes() > MOST_FILE_BYTES) {
                throw new IOException("its list names a file that no boot partition has");
            }
            int slash = entry.path().lastIndexOf('/');
            String name = entry.path().substring(slash + 1);
            String folder = slash < 0 ? "" : entry.path().substring(0, slash);
            byFolder.computeIfAbsent(folder, none -> new ArrayList<>())
                    .add(new DirectoryEntry(
                            name,
                            name,
                            entry.folder(),
                            entry.attributes(),
                            number,
                            entry.folder() ? 0 : entry.bytes(),
                            number,
                            List.of()));
            byNumber.put(number, entry);
            folders.put(number, entry.path());
            number++;
        }
    }

    /** Whether a file begins as those that {@link KeptWriter} writes. */
    public static boolean isOne(Path file) {
        byte[] name = KeptWriter.MANIFEST.getBytes(StandardCharsets.US_ASCII);
        try (InputStream in = Files.newInputStream(file)) {
            byte[] head = in.readNBytes(NAME_AT + name.length);
            return head.length == NAME_AT + name.length
                    && Arrays.equals(head, 0, ZIP.length, ZIP, 0, ZIP.length)
                    && Arrays.equals(head, NAME_AT, head.length, name, 0, name.length);
        } catch (IOException e) {
            return false;
        }
    }

    /** @throws IOException where it is damaged, or none that this version can read */
    public static KeptFiles open(Path file) throws IOException {
        ZipFile zip = new ZipFile(file.toFile());
        try {
            ZipEntry list = zip.getEntry(KeptWriter.MANIFEST);
            if (list == null) {
                throw new IOException("it has no list of files");
            }
            try (InputStream in = zip.getInputStream(list)) {
                byte[] bytes = in.readNBytes(KeptManifest.MOST_BYTES + 1);
                if (bytes.length > KeptManifest.MOST_BYTES) {
                    throw new IOException("its list of files is larger than any");
                }
                return new KeptFiles(zip, KeptManifest.parse(bytes));
            }
        } catch (IOException | RuntimeException e) {
            zip.close();
            throw e;
        }
    }

    /** The partition that they come from. */
    public KeptPartition partition() {
        return manifest.partition();
    }

    /** Reads every file and holds it against the list; returns what is not as that says, in sentences. */
    public List<String> faults() throws IOException {
        List<String> faults = new ArrayList<>();
        for (KeptManifest.Entry entry : manifest.files()) {
            if (!entry.folder() && !isWhole(entry)) {
                faults.add(entry.path() + " is not as it was kept");
            }
        }
        return faults;
    }

    private boolean isWhole(KeptManifest.Entry entry) throws IOException {
        MessageDigest digest = KeptWriter.sha256();
        long bytes = 0;
        try (InputStream in = stream(entry)) {
            byte[] piece = new byte[PIECE];
            for (int n = in.read(piece); n > 0 && bytes <= entry.bytes(); n = in.read(piece)) {
                digest.update(piece, 0, n);
                bytes += n;
            }
        } catch (IOException e) {
            return false;
        }
        return bytes == entry.bytes()
                && HexFormat.of().formatHex(digest.digest()).equals(entry.sha256());
    }

    private InputStream stream(KeptManifest.Entry entry) throws IOException {
        ZipEntry kept = zip.getEntry(KeptWriter.FILES + entry.path());
        if (kept == null) {
            throw new IOException(entry.path() + " is in the list of kept files and not among them");
        }
        return zip.getInputStream(kept);
    }

    @Override
    public Directory root() {
        return folder("");
    }

    @Override
    public Directory list(DirectoryEntry folder) throws IOException {
        String path = folders.get(folder.offset());
        if (path == null || !folder.folder()) {
            throw new IOException(folder.name() + " is no folder of these files");
        }
        return folder(path);
    }

    private Directory folder(String path) {
        return new Directory(byFolder.getOrDefault(path, List.of()), Optional.empty(), List.of());
    }

    @Override
    public FileContent read(DirectoryEntry file, int limit) throws IOException {
        byte[] bytes = content(file);
        return new FileContent(bytes.length <= limit ? bytes.clone() : Arrays.copyOf(bytes, limit), warnings(file));
    }

    @Override
    public FileBytes bytes(DirectoryEntry file) throws IOException {
        KeptManifest.Entry entry = entry(file);
        List<String> warnings = warnings(file);
        return new FileBytes() {
            @Override
            public long size() {
                return entry.bytes();
            }

            @Override
            public byte[] read(long offset, int length) throws IOException {
                byte[] all = content(file);
                int from = (int) Math.min(all.length, Math.max(0, offset));
                return Arrays.copyOfRange(all, from, (int) Math.min(all.length, from + (long) length));
            }

            @Override
            public List<String> warnings() {
                return warnings;
            }
        };
    }

    private List<String> warnings(DirectoryEntry file) throws IOException {
        return entry(file).whole() ? List.of() : List.of("it was not whole on the card that it was kept from");
    }

    /** The file that was read last stays, because a look into one reads it piece by piece. */
    private byte[] content(DirectoryEntry file) throws IOException {
        if (file.offset() != lastNumber) {
            KeptManifest.Entry entry = entry(file);
            try (InputStream in = stream(entry)) {
                byte[] bytes = in.readNBytes((int) entry.bytes() + 1);
                boolean same = bytes.length == entry.bytes()
                        && HexFormat.of()
                                .formatHex(KeptWriter.sha256().digest(bytes))
                                .equals(entry.sha256());
                if (!same) {
                    throw new IOException(entry.path() + " is not as it was kept");
                }
                last = bytes;
                lastNumber = file.offset();
            }
        }
        return last;
    }

    private KeptManifest.Entry entry(DirectoryEntry file) throws IOException {
        KeptManifest.Entry entry = byNumber.get(file.offset());
        if (entry == null) {
            throw new IOException(file.name() + " is not among these files");
        }
        return entry;
    }

    @Override
    public WrittenTime times(DirectoryEntry entry) throws IOException {
        KeptManifest.Entry kept = entry(entry);
        return new WrittenTime(moment(kept.written()), moment(kept.created()));
    }

    private static Optional<LocalDateTime> moment(String text) {
        try {
            return text == null || text.isEmpty() ? Optional.empty() : Optional.of(LocalDateTime.parse(text));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** As full as the files make it; there is no volume. */
    @Override
    public VolumeSpace space() {
        long bytes =
                manifest.files().stream().mapToLong(KeptManifest.Entry::bytes).sum();
        long clusters = manifest.partition().sectors()
                * manifest.partition().sectorBytes()
                / Math.max(1, manifest.partition().clusterBytes());
        int unit = Math.max(1, manifest.partition().clusterBytes());
        return new VolumeSpace(Math.max(0, clusters), Math.max(0, clusters - bytes / unit), unit);
    }

    @Override
    public List<String> warnings() {
        return List.of();
    }

    @Override
    public List<String> remarks() {
        return manifest.notes();
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
