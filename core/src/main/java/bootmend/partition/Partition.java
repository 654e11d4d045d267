package bootmend.partition;

/**
 * One partition as its table gives it.
 *
 * @param number counts from 1 as the table's slots do; 0 for a volume on a card without a table
 * @param firstSector first sector on the card, in units of {@code sectorSize}
 * @param sectors length in units of {@code sectorSize}
 * @param sectorSize bytes per sector that the table counts in
 * @param type what the table says it holds, such as {@code 0x0C}
 * @param fatType whether that type is one that a FAT volume has
 */
public record Partition(int number, long firstSector, long sectors, int sectorSize, String type, boolean fatType) {

    /** First byte on the card. */
    public long start() {
        return firstSector * sectorSize;
    }

    /** Length in bytes. */
    public long length() {
        return sectors * sectorSize;
    }
}
