package bootmend.fat;

import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** The files of a boot partition, whether they are read from its sectors or from the folder where it is mounted. */
public interface BootFiles {

    /** The root folder, read once. */
    Directory root() throws IOException;

    /** What {@code folder} holds. */
    Directory list(DirectoryEntry folder) throws IOException;

    /** Reads {@code file}, at most {@code limit} bytes of it. */
    FileContent read(DirectoryEntry file, int limit) throws IOException;

    /** The bytes of {@code file}, which is no folder, at any place. */
    FileBytes bytes(DirectoryEntry file) throws IOException;

    /** When a file or folder was made and written. */
    default WrittenTime times(DirectoryEntry entry) throws IOException {
        return WrittenTime.UNKNOWN;
    }

    /** How full the volume is. */
    VolumeSpace space() throws IOException;

    /** Sentences on what was damaged in the volume's own description. */
    List<String> warnings();

    /** Sentences on how the volume was last put away; they cast no warning on what is read from it. */
    List<String> remarks();

    /** The file or folder at {@code path}, its parts separated by {@code /}, whatever their case. */
    default Optional<DirectoryEntry> find(String path) throws IOException {
        Directory directory = root();
        Optional<DirectoryEntry> found = Optional.empty();
        for (String part : path.split("/", -1)) {
            if (part.isEmpty()) {
                continue;
            }
            if (found.isPresent()) {
                if (!found.get().folder()) {
                    return Optional.empty();
                }
                directory = list(found.get());
            }
            found = directory.find(part);
            if (found.isEmpty()) {
                return found;
            }
        }
        return found;
    }
}
