package bootmend.folder;

import bootmend.CardException;
import bootmend.device.DurableFile;
import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.FileContent;
import bootmend.fat.VolumeSpace;
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
        List<String> doubts = new ArrayList<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
            for (Path path : stream) {
                if (entries.size() >= MOST_ENTRIES) {
                    doubts.add("there are over " + MOST_ENTRIES + " entries; the rest was not looked at");
                    break;
                }
                add(path, entries, doubts);
            }
        }
        entries.sort(Comparator.comparing(DirectoryEntry::name));
        return new Directory(entries, Optional.empty(), doubts);
    }

    private void add(Path path, List<DirectoryEntry> entries, List<String> doubts) throws IOException {
        String name = path.getFileName().toString();
        BasicFileAttributes attributes =
                Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        if (attributes.isRegularFile() || attributes.isDirectory()) {
            boolean folder = attributes.isDirectory();
            long number = numbers.computeIfAbsent(path, each -> (long) numbers.size() + 1);
            paths.put(number, path);
            entries.add(new DirectoryEntry(
                    name, name, folder, 0, number, folder ? 0 : attributes.size(), number, List.of()));
        } else {
            doubts.add(name + " is a link or no plain file, which no boot partition has; it was left alone");
        }
    }

    private Path path(DirectoryEntry entry) throws IOException {
        Path path = paths.get(entry.offset());
        if (path == null) {
            throw new IOException(entry.name() + " is not of this folder");
        }
        return path;
    }

    /** Where the file at that path is, whatever its case, or is to be made in the root folder; listed anew. */
    private Path place(String name) throws IOException {
        MountedFolder now = new MountedFolder(root);
        Optional<DirectoryEntry> entry = now.find(name);
        if (entry.isEmpty() && (name.contains("/") || name.contains("\\") || name.startsWith("."))) {
            throw new IOException(name + " is no name of a file in the root folder");
        }
        Path place = entry.isPresent() ? now.path(entry.get()) : root.resolve(name);
        refuseOutside(place.getParent());
        return place;
    }

    /** What the file at that path holds now, at most {@code limit} bytes of it; null where it is missing. */
    public byte[] content(String name, int limit) throws IOException {
        Path place = place(name);
        return Files.isRegularFile(place, LinkOption.NOFOLLOW_LINKS) ? piece(place, 0, limit) : null;
    }

    /** Puts new content in place of the file's, in one step, and forces it; null takes the file away. */
    public void put(String name, byte[] content) throws IOException {
        Path place = place(name);
        if (content == null) {
            DurableFile.delete(place);
        } else {
            DurableFile.replaceBeside(place, beside(place), content);
        }
        rootFolder = null;
    }

    /** Takes away what a cut left beside the file. */
    public void tidy(String name) throws IOException {
        Path place = place(name);
        if (Files.exists(beside(place), LinkOption.NOFOLLOW_LINKS)) {
            DurableFile.delete(beside(place));
        }
    }

    /** An 8.3 name, which needs no room for a long one. */
    private static Path beside(Path file) {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        String stem = dot < 0 ? name : name.substring(0, dot);
        return file.resolveSibling(stem.substring(0, Math.min(8, stem.length())) + ".bm~");
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
            public List<String> doubts() {
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
    public List<String> doubts() {
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
