package bootmend.fat;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * What is left in a folder of the entry of a deleted file or folder.
 *
 * @param name the long name where it is left whole, else the short name, whose first character is gone and shown as
 *     {@code ?}
 * @param folder whether it was a folder
 * @param firstCluster where its content began, which may hold something else by now; 0 for an empty file
 * @param size bytes, 32 bits unsigned
 * @param offset place of the 32-byte entry, in bytes from the volume's start
 * @param written when it was last written, by the clock of whoever wrote it
 */
public record DeletedEntry(
        String name, boolean folder, long firstCluster, long size, long offset, Optional<LocalDateTime> written) {}
