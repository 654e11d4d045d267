package bootmend.card;

import com.fasterxml.jackson.annotation.JsonIgnore;

/**
 * The boot partition, as a user is shown it.
 *
 * @param table {@code MBR}, {@code GPT} or {@code none}
 * @param number counts from 1; 0 on a card without a table
 * @param firstSector and {@code sectors}: in units of {@code sectorBytes}
 * @param reason why this partition was taken
 * @param fatType {@code FAT12}, {@code FAT16} or {@code FAT32}; empty where there is no boot partition
 * @param label the volume label, empty where there is none
 * @param serial the volume serial number as eight hex digits with a hyphen, such as {@code 1A2B-3C4D}
 * @param clusterBytes bytes of one cluster; 0 where only the mounted folder is known
 */
public record PartitionView(
        String table,
        int number,
        long firstSector,
        long sectors,
        int sectorBytes,
        String reason,
        String fatType,
        String label,
        String serial,
        int clusterBytes) {

    /** Where there is no boot partition; {@code reason} says what there is. */
    static PartitionView none(String reason) {
        return new PartitionView("none", 0, 0, 0, 0, reason, "", "", "", 0);
    }

    /** Whether there is a boot partition at all. */
    @JsonIgnore
    public boolean isThere() {
        return !fatType.isEmpty();
    }

    /** Whether only the folder where it is mounted is known, and nothing of its sectors. */
    @JsonIgnore
    public boolean isMounted() {
        return clusterBytes == 0;
    }

    /** Length in bytes. */
    public long bytes() {
        return sectors * sectorBytes;
    }
}
