package bootmend.fat;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A file or folder as its folder lists it.
 *
 * @param name the long name where it has a valid one, else the short name as shown
 * @param shortName the 8.3 name as shown
 * @param folder whether it is a folder
 * @param attributes the entry's attribute byte
 * @param firstCluster 0 for an empty file
 * @param size bytes, 32 bits unsigned; 0 for a folder
 * @param offset place of the 32-byte entry, in bytes from the volume's start
 * @param longNameOffsets places of its long-name slots
 * @param written when it was last written, by the clock of whoever wrote it; empty where it says none that can be
 */
public record DirectoryEntry(
        String name,
        String shortName,
        boolean folder,
        int attributes,
        long firstCluster,
        long size,
        long offset,
        List<Long> longNameOffsets,
        Optional<LocalDateTime> written) {

    public DirectoryEntry {
        longNameOffsets = List.copyOf(longNameOffsets);
    }

    /** An entry without a time. */
    public DirectoryEntry(
            String name,
            String shortName,
            boolean folder,
            int attributes,
            long firstCluster,
            long size,
            long offset,
            List<Long> longNameOffsets) {
        this(name, shortName, folder, attributes, firstCluster, size, offset, longNameOffsets, Optional.empty());
    }

    /** The root folder has no entry; this stands in for it where one is asked for. */
    public static DirectoryEntry root(Geometry geometry) {
        return new DirectoryEntry("", "", true, Slot.ATTRIBUTE_FOLDER, geometry.rootCluster(), 0, 0, List.of());
    }

    /** Whether this entry is found under {@code wanted}; FAT names do not tell case apart. */
    public boolean isNamed(String wanted) {
        return name.equalsIgnoreCase(wanted) || shortName.equalsIgnoreCase(wanted);
    }

    /** Whether its 8.3 name has only characters that such a name may have. */
    public boolean hasPlausibleShortName() {
        return !shortName.isBlank() && shortName.chars().noneMatch(DirectoryEntry::isForbidden);
    }

    /** Source: "FAT: General Overview of On-Disk Format", version 1.03, "Short Directory Entry", illegal characters. */
    private static boolean isForbidden(int character) {
        return character < ' ' || character == 0x7F || "\"*/:<>?\\|".indexOf(character) >= 0;
    }
}
