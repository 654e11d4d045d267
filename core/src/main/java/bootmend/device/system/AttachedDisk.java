package bootmend.device.system;

import bootmend.device.CardName;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * One disk that is attached to this computer, whole.
 *
 * @param name what to call it
 * @param model the maker's words for it, or the image behind a loop device; may be empty
 * @param bus how it is attached, in one lower-case word
 * @param removable whether its medium is one to take out
 * @param readOnly whether the system takes it for write-protected
 * @param system why it must be left alone for the running system's sake
 * @param mountedAt where it is mounted as a whole, without partitions
 */
public record AttachedDisk(
        CardName name,
        long bytes,
        String model,
        String bus,
        boolean removable,
        boolean readOnly,
        Optional<String> system,
        List<AttachedPartition> partitions,
        List<String> mountedAt) {

    public AttachedDisk {
        partitions = List.copyOf(partitions);
        mountedAt = List.copyOf(mountedAt);
    }

    /** The name as a path; where disks are no files, good for telling one from another alone. */
    public Path path() {
        return Path.of(name.text());
    }
}
