package bootmend.boot;

import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.FileContent;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** A boot partition's files, each found and looked into once, however many boards need it. */
final class BootFolder {

    /** One kind of look into a file. */
    @FunctionalInterface
    private interface Look<T> {
        T at(FileBytes file) throws IOException;
    }

    private static final String NOT_OPENED = "is there, was not looked into";

    private final BootFiles files;
    private final Depth depth;
    private final Map<String, Optional<DirectoryEntry>> found = new HashMap<>();
    private final Map<Long, Directory> folders = new HashMap<>();
    private final Map<String, FileLook> elves = new HashMap<>();
    private final Map<String, FileLook> plain = new HashMap<>();
    private final Map<String, KernelLook> kernels = new HashMap<>();
    private final Map<String, FlatTree> trees = new HashMap<>();
    private final Map<String, FileLook> earlies = new HashMap<>();
    private final Map<String, Optional<FirmwareVersion>> versions = new HashMap<>();
    private final Map<String, ConfigSource> configs = new HashMap<>();

    BootFolder(BootFiles files, Depth depth) {
        this.files = files;
        this.depth = depth;
    }

    BootFiles files() {
        return files;
    }

    Depth depth() {
        return depth;
    }

    ConfigSource config(String name) throws IOException {
        String key = name.toLowerCase(Locale.ROOT);
        ConfigSource config = configs.get(key);
        if (config == null) {
            config = ConfigSource.read(this, name);
            configs.put(key, config);
        }
        return config;
    }

    /** The file, no folder, at a path; {@code \} and a leading {@code /} do not matter. */
    Optional<DirectoryEntry> file(String path) throws IOException {
        return entry(path).filter(entry -> !entry.folder());
    }

    boolean has(String path) throws IOException {
        return file(path).isPresent();
    }

    Optional<DirectoryEntry> entry(String path) throws IOException {
        String key = key(path);
        Optional<DirectoryEntry> entry = found.get(key);
        if (entry == null) {
            entry = key.isEmpty() ? Optional.empty() : search(key);
            found.put(key, entry);
        }
        return entry;
    }

    private static String key(String path) {
        return path.replace('\\', '/')
                .replaceAll("/+", "/")
                .replaceFirst("^/", "")
                .toLowerCase(Locale.ROOT);
    }

    private Optional<DirectoryEntry> search(String key) throws IOException {
        int slash = key.lastIndexOf('/');
        if (slash < 0) {
            return files.root().find(key);
        }
        Optional<DirectoryEntry> parent = entry(key.substring(0, slash)).filter(DirectoryEntry::folder);
        return parent.isEmpty() ? Optional.empty() : list(parent.get()).find(key.substring(slash + 1));
    }

    private Directory list(DirectoryEntry folder) {
        return folders.computeIfAbsent(folder.offset(), none -> {
            try {
                return files.list(folder);
            } catch (IOException e) {
                // A folder that cannot be read has no file for the board either.
                return new Directory(List.of(), Optional.empty(), List.of(String.valueOf(e.getMessage())));
            }
        });
    }

    /** Names of the files in a folder, the root where the path is empty; none where there is no such folder. */
    List<String> names(String folder) throws IOException {
        String key = key(folder).replaceFirst("/$", "");
        Directory directory = files.root();
        if (!key.isEmpty()) {
            Optional<DirectoryEntry> entry = entry(key).filter(DirectoryEntry::folder);
            if (entry.isEmpty()) {
                return List.of();
            }
            directory = list(entry.get());
        }
        return directory.entries().stream()
                .filter(entry -> !entry.folder())
                .map(DirectoryEntry::name)
                .toList();
    }

    /** At most {@code limit} bytes of a file that is there. */
    FileContent read(DirectoryEntry entry, int limit) throws IOException {
        return files.read(entry, limit);
    }

    /** A start file. */
    FileLook elf(String path) throws IOException {
        return look(path, elves, ElfLook::of, Function.identity(), "a start file");
    }

    /** A file whose format is not published: only whether there is something in it. */
    FileLook plain(String path) throws IOException {
        return look(
                path,
                plain,
                file -> ZeroSpots.in(file, "a file", file.size() + " bytes, not all zero"),
                Function.identity(),
                "a file");
    }

    KernelLook kernel(String path) throws IOException {
        return look(path, kernels, KernelLook::of, look -> new KernelLook(KernelLook.Kind.OTHER, look), "a kernel");
    }

    FlatTree tree(String path) throws IOException {
        return look(path, trees, FlatTree::of, look -> new FlatTree(look, Map.of()), "a device tree");
    }

    FileLook initramfs(String path) throws IOException {
        return look(path, earlies, InitramfsLook::of, Function.identity(), "an early file system");
    }

    /** The build that a file holds; never asked of a card that is looked at by names alone. */
    Optional<FirmwareVersion> version(String path) throws IOException {
        Optional<DirectoryEntry> entry = file(path);
        if (entry.isEmpty() || depth != Depth.CONTENTS) {
            return Optional.empty();
        }
        Optional<FirmwareVersion> version = versions.get(key(path));
        if (version == null) {
            try {
                version = FirmwareVersion.in(entry.get().name(), files.bytes(entry.get()));
            } catch (IOException e) {
                version = Optional.empty();
            }
            versions.put(key(path), version);
        }
        return version;
    }

    private <T> T look(String path, Map<String, T> kept, Look<T> look, Function<FileLook, T> bare, String kind)
            throws IOException {
        T before = kept.get(key(path));
        if (before == null) {
            before = look(file(path).orElseThrow(() -> new IOException(path + " is not there")), look, bare, kind);
            kept.put(key(path), before);
        }
        return before;
    }

    private <T> T look(DirectoryEntry entry, Look<T> look, Function<FileLook, T> bare, String kind) {
        if (entry.size() == 0) {
            return bare.apply(FileLook.cut(kind, "has no byte"));
        }
        if (depth != Depth.CONTENTS) {
            return bare.apply(FileLook.whole(kind, NOT_OPENED));
        }
        try {
            FileBytes file = files.bytes(entry);
            if (!file.warnings().isEmpty()) {
                return bare.apply(FileLook.damaged(
                        kind, "cannot be read to its end: " + file.warnings().get(0)));
            }
            return look.at(file);
        } catch (IOException e) {
            return bare.apply(FileLook.damaged(kind, "cannot be read: " + e.getMessage()));
        }
    }
}
