package bootmend.keep;

import java.util.Objects;

/**
 * The partition that kept files come from.
 *
 * @param table {@code MBR}, {@code GPT} or {@code none}; {@code not seen} where only its mounted folder was
 * @param number counts from 1; 0 where there is no table
 * @param firstSector and {@code sectors}: in units of {@code sectorBytes}
 * @param fatType such as {@code FAT32}
 * @param serial the volume serial number, such as {@code 1A2B-3C4D}
 */
public record KeptPartition(
        String table,
        int number,
        long firstSector,
        long sectors,
        int sectorBytes,
        String fatType,
        String label,
        String serial,
        int clusterBytes) {

    public KeptPartition {
        Objects.requireNonNull(table);
        Objects.requireNonNull(fatType);
        Objects.requireNonNull(label);
        Objects.requireNonNull(serial);
    }
}
