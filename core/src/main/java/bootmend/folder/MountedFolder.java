package bootmend.folder;

import bootmend.CardException;
import bootmend.device.DurableFile;
import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.FileContent;
import bootmend.fat.VolumeSpace;
import bootmend.fat.WrittenTime;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A boot partition as the folder where the system has mounted it. No link is ever followed, so nothing outside the folder
 * is read or written.
 *
 * <p>Its entries have no place on a disk; they carry numbers that this object gives out instead.
 */
public final class MountedFolder implements BootFiles {

    /** No source: a bound that no boot partition's folder comes near. */
    private static final int MOST_ENTRIES = 65_536;

    private static final int PIECE = 4096;
    private static final int FAT_SECONDS = 2;
    private static final int SHORT_STEM = 8;
    private static final int MOST_NAMES = 100;
    private static final String TEMPORARY_END = ".bm~";
    private static final int LONGEST_NAME = 255;
    private static final int MOST_DEPTH = 16;

    private final Path root;
    private final Map<Long, Path> paths = new HashMap<>();
    private final Map<Path, Long> numbers = new HashMap<>();
    private Directory rootFolder;

    private MountedFolder(Path root) {
        this.root = root;
    }

    /**
     * Opens the folder.
     *
     * @throws CardException when it cannot be read, or holds neither a config file nor boot firmware
     */
    public static MountedFolder open(Path folder) throws CardException, IOException {
        MountedFolder opened = new MountedFolder(folder.toRealPath());
        if (!Files.isReadable(opened.root)) {
            throw CardException.unreadable(
                    "you have no right to read it", "Ask whoever runs this computer for the right to read the folder.");
        }
        if (opened.root().entries().stream().noneMatch(MountedFolder::isBootFile)) {
            throw CardException.unreadable(
                    "it is a folder that holds neither config.txt nor boot firmware",
                    "Name the folder where the card's boot partition is mounted, an image file, or the reader's device.");
        }
        return opened;
    }

    /** Whether {@link #open} would take the folder for a boot partition. */
    public static boolean isBootFolder(Path folder) {
        try {
            open(folder);
            return true;
        } catch (CardException | IOException e) {
            return false;
        }
    }

    private static boolean isBootFile(DirectoryEntry entry) {
        String name = entry.name().toLowerCase(Locale.ROOT);
        return !entry.folder() && (name.equals("config.txt") || name.startsWith("start") && name.endsWith(".elf"));
    }

    /** The folder itself, without links. */
    public Path path() {
        return root;
    }

    @Override
    public Directory root() throws IOException {
        if (rootFolder == null) {
            rootFolder = list(root);
        }
        return rootFolder;
    }

    @Override
    public Directory list(DirectoryEntry folder) throws IOException {
        return list(path(folder));
    }

    private Directory list(Path folder) throws IOException {
        refuseOutside(folder);
        List<DirectoryEntry> entries = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
            for (Path path : stream) {
                if (entries.size() >= MOST_ENTRIES) {
                    warnings.add("there are over " + MOST_ENTRIES + " entries; the rest was not looked at");
                    break;
                }
                add(path, entries, warnings);
            }
        }
        entries.sort(Comparator.comparing(DirectoryEntry::name));
        return new Directory(entries, Optional.empty(), warnings);
    }

    private void add(Path path, List<DirectoryEntry> entries, List<String> warnings) throws IOException {
        String name = path.getFileName().toString();
        BasicFileAttributes attributes =
                Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        if (attributes.isRegularFile() || attributes.isDirectory()) {
            boolean folder = attributes.isDirectory();
            long number = numbers.computeIfAbsent(path, each -> (long) numbers.size() + 1);
            paths.put(number, path);
            entries.add(new DirectoryEntry(
                    name,
                    name,
                    folder,
                    0,
                    number,
                    folder ? 0 : attributes.size(),
                    number,
                    List.of(),
                    Optional.of(LocalDateTime.ofInstant(
                            attributes.lastModifiedTime().toInstant(), ZoneId.systemDefault()))));
        } else {
            warnings.add(name + " is a link or no plain file, which no boot partition has; it was left alone");
        }
    }

    private Path path(DirectoryEntry entry) throws IOException {
        Path path = paths.get(entry.offset());
        if (path == null) {
            throw new IOException(entry.name() + " is not of this folder");
        }
        return path;
    }

    /** Where the file at that path is, whatever its case, or is to be made in a folder that is there; listed anew. */
    private Path place(String name) throws IOException {
        MountedFolder now = new MountedFolder(root);
        Optional<DirectoryEntry> entry = now.find(name);
        if (entry.isEmpty() && (name.contains("\\") || name.startsWith(".") || !isInsidePath(name))) {
            throw new IOException(name + " is no name of a file in the folder");
        }
        Path place = entry.isPresent() ? now.path(entry.get()) : now.placeOfNew(name);
        refuseOutside(place.getParent());
        return place;
    }

    private Path placeOfNew(String name) throws IOException {
        int slash = name.lastIndexOf('/');
        if (slash < 0) {
            return root.resolve(name);
        }
        DirectoryEntry folder = find(name.substring(0, slash))
                .filter(DirectoryEntry::folder)
                .orElseThrow(() -> new IOException("there is no folder " + name.substring(0, slash)
                        + " on the card; make it in the system first"));
        return path(folder).resolve(name.substring(slash + 1));
    }

    /** What the file at that path holds now, at most {@code limit} bytes of it; null where it is missing. */
    public byte[] content(String name, int limit) throws IOException {
        Path place = place(name);
        return Files.isRegularFile(place, LinkOption.NOFOLLOW_LINKS) ? piece(place, 0, limit) : null;
    }

    /** When the file at that path was last written, to two seconds as FAT keeps it; nothing where it is missing. */
    public Optional<Instant> written(String name) throws IOException {
        Path place = place(name);
        return Files.isRegularFile(place, LinkOption.NOFOLLOW_LINKS)
                ? Optional.of(inFatSteps(Files.getLastModifiedTime(place, LinkOption.NOFOLLOW_LINKS)
                        .toInstant()))
                : Optional.empty();
    }

    /** The moment as a file on a FAT volume can keep it. */
    public static Instant inFatSteps(Instant moment) {
        return Instant.ofEpochSecond(moment.getEpochSecond() / FAT_SECONDS * FAT_SECONDS);
    }

    /**
     * Puts new content in place of the file's, in one step, and forces it; null takes the file away.
     *
     * @param beside a name beside the file that nothing has yet, for the new file until it is whole
     * @param written the time that the new file gets, to two seconds
     */
    public void put(String name, String beside, byte[] content, Instant written) throws IOException {
        Path place = place(name);
        if (content == null) {
            DurableFile.delete(place);
        } else {
            DurableFile.replaceBeside(place, neighbour(place, beside), content, inFatSteps(written));
        }
        rootFolder = null;
    }

    /** Whether nothing has the name {@code beside} in the folder of the file. */
    public boolean isFreeBeside(String name, String beside) throws IOException {
        return !Files.exists(neighbour(place(name), beside), LinkOption.NOFOLLOW_LINKS);
    }

    /**
     * An 8.3 name beside the file that nothing has, which needs no room for a long one.
     *
     * @param taken names that are not free either
     * @throws IOException where all of a hundred are taken
     */
    public String freeNameBeside(String name, Set<String> taken) throws IOException {
        Path place = place(name);
        String whole = place.getFileName().toString();
        int dot = whole.lastIndexOf('.');
        String stem = (dot < 0 ? whole : whole.substring(0, dot)).replaceAll("[^A-Za-z0-9_-]", "_");
        for (int i = 0; i < MOST_NAMES; i++) {
            String number = i == 0 ? "" : Integer.toString(i);
            String free =
                    stem.substring(0, Math.min(SHORT_STEM - number.length(), stem.length())) + number + TEMPORARY_END;
            if (!taken.contains(free) && isFreeBeside(name, free)) {
                return free;
            }
        }
        throw new IOException("every name for a file beside " + name + " is taken");
    }

    /**
     * Takes away what a cut left beside the file: a file of that name which holds the start of {@code content}, and no
     * other.
     */
    public void tidy(String name, String beside, byte[] content) throws IOException {
        Path left = neighbour(place(name), beside);
        if (content != null && Files.isRegularFile(left, LinkOption.NOFOLLOW_LINKS)) {
            byte[] there = piece(left, 0, content.length + 1);
            if (there.length <= content.length && Arrays.equals(there, Arrays.copyOf(content, there.length))) {
                DurableFile.delete(left);
            }
        }
    }

    private static Path neighbour(Path file, String beside) throws IOException {
        if (!isTemporaryName(beside)) {
            throw new IOException("no new file is given the name " + beside);
        }
        return file.resolveSibling(beside);
    }

    /** Whether a file that only stands there for a moment can have this name. */
    public static boolean isTemporaryName(String name) {
        return name.matches("[A-Za-z0-9_-]{1,8}\\.bm~");
    }

    /**
     * Whether a path with {@code /} between its names stays inside any folder and has names that a FAT volume can keep.
     *
     * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT Long Directory Entries" (length and
     * characters of long names).
     */
    public static boolean isInsidePath(String path) {
        String[] names = path.split("/", -1);
        return names.length <= MOST_DEPTH && Arrays.stream(names).allMatch(MountedFolder::isName);
    }

    private static boolean isName(String name) {
        return !name.isEmpty()
                && name.length() <= LONGEST_NAME
                && !name.equals(".")
                && !name.equals("..")
                && name.chars().noneMatch(c -> Character.isISOControl(c) || "\\:*?\"<>|".indexOf(c) >= 0);
    }

    @Override
    public FileContent read(DirectoryEntry file, int limit) throws IOException {
        return new FileContent(piece(path(file), 0, limit), List.of());
    }

    @Override
    public FileBytes bytes(DirectoryEntry file) throws IOException {
        Path path = path(file);
        return new FileBytes() {
            @Override
            public long size() {
                return file.size();
            }

            @Override
            public byte[] read(long offset, int length) throws IOException {
                return piece(path, Math.max(0, offset), length);
            }

            @Override
            public List<String> warnings() {
                return List.of();
            }
        };
    }

    private byte[] piece(Path file, long start, int length) throws IOException {
        refuseOutside(file.getParent());
        try (SeekableByteChannel channel =
                Files.newByteChannel(file, Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS))) {
            channel.position(start);
            ByteBuffer bytes = ByteBuffer.allocate((int) Math.max(0, Math.min(length, channel.size() - start)));
            while (bytes.hasRemaining() && channel.read(bytes) > 0) {
                // Read on.
            }
            return Arrays.copyOf(bytes.array(), bytes.position());
        }
    }

    @Override
    public WrittenTime times(DirectoryEntry entry) throws IOException {
        Instant written = Files.getLastModifiedTime(path(entry), LinkOption.NOFOLLOW_LINKS)
                .toInstant();
        return new WrittenTime(
                Optional.of(LocalDateTime.ofInstant(inFatSteps(written), ZoneId.systemDefault())), Optional.empty());
    }

    @Override
    public VolumeSpace space() throws IOException {
        FileStore store = Files.getFileStore(root);
        return new VolumeSpace(store.getTotalSpace() / PIECE, store.getUsableSpace() / PIECE, PIECE);
    }

    /** The system's word for how the volume is laid out, such as {@code vfat}. */
    public String type() throws IOException {
        return Files.getFileStore(root).type();
    }

    /** Bytes of the whole volume. */
    public long bytes() throws IOException {
        return Files.getFileStore(root).getTotalSpace();
    }

    @Override
    public List<String> warnings() {
        return List.of();
    }

    @Override
    public List<String> remarks() {
        return List.of();
    }

    /** A folder on the way may have become a link since it was listed. */
    private void refuseOutside(Path folder) throws IOException {
        if (!folder.toRealPath().startsWith(root)) {
            throw new IOException(folder + " leads out of the folder");
        }
    }
}
