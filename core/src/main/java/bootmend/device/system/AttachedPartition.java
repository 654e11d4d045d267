package bootmend.device.system;

import java.nio.file.Path;
import java.util.List;

/**
 * One partition of an attached disk.
 *
 * @param name a label or type, as the system gives it; may be empty
 * @param mountedAt where its files can be reached; empty where it is not mounted
 */
public record AttachedPartition(Path path, long bytes, String name, List<String> mountedAt) {

    public AttachedPartition {
        mountedAt = List.copyOf(mountedAt);
    }
}
