package bootmend.fat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a folder holds.
 *
 * @param entries in the order they stand, without {@code .}, {@code ..} and the volume label
 * @param label the volume label entry's text, which only the root folder has
 * @param deleted entries of files and folders that were deleted, in the order they stand
 * @param warnings sentences on what in it was damaged
 */
public record Directory(
        List<DirectoryEntry> entries, Optional<String> label, List<DeletedEntry> deleted, List<String> warnings) {

    public Directory {
        entries = List.copyOf(entries);
        deleted = List.copyOf(deleted);
        warnings = List.copyOf(warnings);
    }

    /** A folder of which nothing tells what was deleted from it. */
    public Directory(List<DirectoryEntry> entries, Optional<String> label, List<String> warnings) {
        this(entries, label, List.of(), warnings);
    }

    /** The first entry of that name, whatever its case. */
    public Optional<DirectoryEntry> find(String name) {
        return entries.stream().filter(entry -> entry.isNamed(name)).findFirst();
    }

    Directory withWarning(String warning) {
        return new Directory(
                entries,
                label,
                deleted,
                Stream.concat(warnings.stream(), Stream.of(warning)).toList());
    }
}
