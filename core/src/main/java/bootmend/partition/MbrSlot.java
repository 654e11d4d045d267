package bootmend.partition;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;

/**
 * One of the four entries of an MBR.
 *
 * @param number 1 to 4, more for a logical partition
 * @param type the type byte
 * @param firstSector and {@code sectors}: 32-bit unsigned, in sectors
 */
record MbrSlot(int number, int type, long firstSector, long sectors) {

    private static final int TABLE_OFFSET = 446;
    private static final int SLOT_SIZE = 16;
    static final int SLOTS = 4;

    /** FAT12, FAT16 (three ways), FAT32 (two ways), EFI system. Source: UEFI Specification 2.10, 5.2; common practice. */
    private static final Set<Integer> FAT_TYPES = Set.of(0x01, 0x04, 0x06, 0x0B, 0x0C, 0x0E, 0xEF);

    private static final Set<Integer> EXTENDED_TYPES = Set.of(0x05, 0x0F, 0x85);

    static List<MbrSlot> readAll(ByteBuffer sector) {
        List<MbrSlot> slots = new ArrayList<>();
        for (int i = 0; i < SLOTS; i++) {
            int at = TABLE_OFFSET + i * SLOT_SIZE;
            slots.add(new MbrSlot(
                    i + 1,
                    sector.get(at + 4) & 0xFF,
                    sector.getInt(at + 8) & 0xFFFFFFFFL,
                    sector.getInt(at + 12) & 0xFFFFFFFFL));
        }
        return slots;
    }

    boolean isEmpty() {
        return type == 0 || sectors == 0 || firstSector == 0 && type != 0xEE;
    }

    boolean isExtended() {
        return EXTENDED_TYPES.contains(type);
    }

    boolean isFat() {
        return FAT_TYPES.contains(type);
    }

    /** The same with its place on the card in place of that from its own table. */
    MbrSlot at(int other, long place) {
        return new MbrSlot(other, type, place, sectors);
    }

    Partition toPartition(int sectorSize) {
        return new Partition(
                number,
                firstSector,
                sectors,
                sectorSize,
                "0x" + HexFormat.of().withUpperCase().toHexDigits(type, 2),
                isFat());
    }
}
