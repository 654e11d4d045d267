package bootmend.boot;

import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.FileContent;
import bootmend.fat.VolumeSpace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A boot partition's files as they would be with some files of another in their places; nothing is written. */
final class PatchedFiles implements BootFiles {

    /** Where an entry's bytes come from. */
    private record Source(BootFiles files, DirectoryEntry entry) {}

    private final BootFiles base;
    /** Of the other: files by their path in lower case, with every folder above them. */
    private final Map<String, Source> taken = new HashMap<>();

    private final Map<String, String> names = new HashMap<>();
    private final Map<DirectoryEntry, Source> sources = new HashMap<>();
    private final Map<DirectoryEntry, String> folders = new HashMap<>();
    private long numbers = Long.MIN_VALUE;

    /** @param files of {@code good}, by the path that they are to have */
    PatchedFiles(BootFiles base, BootFiles good, Map<String, DirectoryEntry> files) {
        this.base = base;
        files.forEach((path, entry) -> {
            taken.put(key(path), new Source(good, entry));
            names.put(key(path), path);
        });
    }

    private static String key(String path) {
        return path.toLowerCase(Locale.ROOT);
    }

    @Override
    public Directory root() throws IOException {
        return patched("", base.root());
    }

    @Override
    public Directory list(DirectoryEntry folder) throws IOException {
        String path = folders.get(folder);
        if (path == null) {
            return base.list(folder);
        }
        Source own = sources.get(folder);
        return patched(
                path + "/",
                own == null ? new Directory(List.of(), Optional.empty(), List.of()) : base.list(own.entry()));
    }

    /** @param prefix path of the folder with a slash behind it; empty for the root */
    private Directory patched(String prefix, Directory own) {
        List<DirectoryEntry> entries = new ArrayList<>();
        Map<String, String> below = names.values().stream()
                .filter(path -> key(path).startsWith(key(prefix)))
                .map(path -> path.substring(prefix.length()).split("/", 2)[0])
                .collect(Collectors.toMap(PatchedFiles::key, name -> name, (one, other) -> one));
        for (DirectoryEntry entry : own.entries()) {
            String name = key(entry.name());
            boolean replaced = !entry.folder() && taken.containsKey(key(prefix) + name);
            if (entry.folder()) {
                below.remove(name);
                entries.add(folder(prefix + entry.name(), entry));
            } else if (replaced) {
                below.remove(name);
                entries.add(file(entry.name(), taken.get(key(prefix) + name)));
            } else {
                sources.put(entry, new Source(base, entry));
                entries.add(entry);
            }
        }
        below.forEach((name, written) -> entries.add(
                taken.containsKey(key(prefix) + name)
                        ? file(written, taken.get(key(prefix) + name))
                        : folder(prefix + written, null)));
        return new Directory(entries, own.label(), own.warnings());
    }

    private DirectoryEntry file(String name, Source source) {
        DirectoryEntry entry =
                new DirectoryEntry(name, name, false, 0, numbers, source.entry().size(), numbers++, List.of());
        sources.put(entry, source);
        return entry;
    }

    private DirectoryEntry folder(String path, DirectoryEntry own) {
        DirectoryEntry entry = own != null
                ? own
                : new DirectoryEntry(
                        path.substring(path.lastIndexOf('/') + 1),
                        path.substring(path.lastIndexOf('/') + 1),
                        true,
                        0,
                        numbers,
                        0,
                        numbers++,
                        List.of());
        folders.put(entry, path);
        if (own != null) {
            sources.put(entry, new Source(base, own));
        }
        return entry;
    }

    private Source source(DirectoryEntry file) {
        return sources.getOrDefault(file, new Source(base, file));
    }

    @Override
    public FileContent read(DirectoryEntry file, int limit) throws IOException {
        Source source = source(file);
        return source.files().read(source.entry(), limit);
    }

    @Override
    public FileBytes bytes(DirectoryEntry file) throws IOException {
        Source source = source(file);
        return source.files().bytes(source.entry());
    }

    @Override
    public VolumeSpace space() throws IOException {
        return base.space();
    }

    @Override
    public List<String> warnings() {
        return base.warnings();
    }

    @Override
    public List<String> remarks() {
        return base.remarks();
    }
}
