package bootmend.partition;

import java.util.Optional;
import java.util.UUID;

/**
 * One partition of a card.
 *
 * @param number as boards and systems count: 1 to 4 in an MBR, from 5 on for logical ones, 0 for a card without a table
 * @param firstSector first sector on the card, in units of {@code sectorSize}
 * @param sectors length in units of {@code sectorSize}, as its table says
 * @param sectorSize bytes per sector that the table counts in
 * @param type what the table says it holds: a byte such as {@code 0x0C}, or a GUID
 * @param fatType whether that type is one that a FAT volume has
 * @param guid its own GUID in a GPT
 * @param name its name in a GPT, as it stands there; empty where it has none
 * @param origin how it is known of
 * @param whole whether all of it lies on the card
 */
public record Partition(
        int number,
        long firstSector,
        long sectors,
        int sectorSize,
        String type,
        boolean fatType,
        Optional<UUID> guid,
        String name,
        Origin origin,
        boolean whole) {

    /** How a partition is known of. */
    public enum Origin {
        /** A table leads to it, or the card is one volume as a whole. */
        TABLE,
        /** No table leads to it: its boot sector was come upon. To be read, never written. */
        SEARCH,
        /** A user named its place. */
        NAMED
    }

    /** One of which a table tells its place and type alone. */
    public Partition(int number, long firstSector, long sectors, int sectorSize, String type, boolean fatType) {
        this(number, firstSector, sectors, sectorSize, type, fatType, Optional.empty(), "", Origin.TABLE, true);
    }

    /** Whether it lies in an extended partition; told by its number, and only of a card with an MBR. */
    public boolean isLogical() {
        return guid.isEmpty() && number > MbrSlot.SLOTS;
    }

    /** First byte on the card. */
    public long start() {
        return firstSector * sectorSize;
    }

    /** Length in bytes. */
    public long length() {
        return sectors * sectorSize;
    }

    Partition cutOff() {
        return new Partition(number, firstSector, sectors, sectorSize, type, fatType, guid, name, origin, false);
    }
}
