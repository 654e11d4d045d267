package bootmend.device.system;

import bootmend.device.CardName;
import java.util.List;

/**
 * One partition of an attached disk.
 *
 * @param device what to call it
 * @param name a label or type, as the system gives it; may be empty
 * @param mountedAt where its files can be reached; empty where it is not mounted
 */
public record AttachedPartition(CardName device, long bytes, String name, List<String> mountedAt) {

    public AttachedPartition {
        mountedAt = List.copyOf(mountedAt);
    }
}
