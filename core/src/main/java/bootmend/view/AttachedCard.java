package bootmend.view;

import java.util.List;
import java.util.Optional;

/**
 * One disk that is attached to this computer, as a user is shown it.
 *
 * @param path what to call it on the command line
 * @param model the maker's words for it, or the image behind a loop device; may be empty
 * @param bus how it is attached, in one lower-case word
 * @param removable whether its medium is one to take out
 * @param readOnly whether the system takes it for write-protected
 * @param boot whether a board could boot from it
 * @param words why it is or is not taken for a boot card, as a clause
 * @param system why it must be left alone for the running system's sake
 * @param mountedAt where it is mounted as a whole
 */
public record AttachedCard(
        String path,
        long bytes,
        String model,
        String bus,
        boolean removable,
        boolean readOnly,
        Boot boot,
        String words,
        Optional<String> system,
        List<Part> partitions,
        List<String> mountedAt) {

    /** Whether a disk looks like a boot card. */
    public enum Boot {
        YES,
        NO,
        /** It could not be looked at. */
        UNKNOWN
    }

    /** One partition; {@code name} is a label or type and may be empty. */
    public record Part(String path, long bytes, String name, List<String> mountedAt) {

        public Part {
            mountedAt = List.copyOf(mountedAt);
        }
    }

    public AttachedCard {
        partitions = List.copyOf(partitions);
        mountedAt = List.copyOf(mountedAt);
    }
}
