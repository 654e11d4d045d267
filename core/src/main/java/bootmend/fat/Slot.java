package bootmend.fat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * One 32-byte slot of a folder and its place on the volume.
 *
 * @param offset first byte, from the volume's start
 */
record Slot(long offset, ByteBuffer bytes) {

    static final int ATTRIBUTE_LABEL = 0x08;
    static final int ATTRIBUTE_FOLDER = 0x10;
    static final int ATTRIBUTE_LONG_NAME = 0x0F;
    static final byte DELETED = (byte) 0xE5;
    private static final int ATTRIBUTE_MASK = 0x3F;

    static Slot at(long offset, byte[] folder, int from) {
        ByteBuffer bytes =
                ByteBuffer.wrap(folder, from, Geometry.SLOT_BYTES).slice().order(ByteOrder.LITTLE_ENDIAN);
        return new Slot(offset, bytes.asReadOnlyBuffer().order(ByteOrder.LITTLE_ENDIAN));
    }

    /** Whether this and all later slots of the folder are unused. */
    boolean isEnd() {
        return bytes.get(0) == 0;
    }

    boolean isDeleted() {
        return bytes.get(0) == DELETED;
    }

    boolean isLongName() {
        return (attributes() & ATTRIBUTE_MASK) == ATTRIBUTE_LONG_NAME;
    }

    boolean isLabel() {
        return (attributes() & (ATTRIBUTE_LABEL | ATTRIBUTE_FOLDER)) == ATTRIBUTE_LABEL && !isLongName();
    }

    /** The entry for {@code .} or {@code ..}. */
    boolean isDot() {
        return bytes.get(0) == '.' && (attributes() & ATTRIBUTE_FOLDER) != 0;
    }

    /** Whether this is the folder entry named {@code dots}, which is {@code .} or {@code ..}. */
    boolean isDot(String dots) {
        String padded = String.format("%-" + ShortName.LENGTH + "s", dots);
        for (int i = 0; i < ShortName.LENGTH; i++) {
            if (u8(i) != padded.charAt(i)) {
                return false;
            }
        }
        return (attributes() & ATTRIBUTE_FOLDER) != 0;
    }

    int attributes() {
        return u8(11);
    }

    ShortName shortName() {
        byte[] raw = new byte[ShortName.LENGTH];
        bytes.get(0, raw);
        return new ShortName(raw, u8(12));
    }

    /** First cluster as stored; on FAT12 and FAT16 the upper half is not part of it. */
    long firstCluster(FatType type) {
        long low = bytes.getShort(26) & 0xFFFFL;
        return type == FatType.FAT32 ? (bytes.getShort(20) & 0xFFFFL) << 16 | low : low;
    }

    long size() {
        return bytes.getInt(28) & 0xFFFFFFFFL;
    }

    /** When it was last written; empty where the words hold no date. */
    Optional<LocalDateTime> written() {
        return FatTime.moment(bytes.getShort(24), bytes.getShort(22));
    }

    int u8(int at) {
        return bytes.get(at) & 0xFF;
    }
}
