package bootmend.fat;

import java.io.IOException;

/**
 * The first two entries of a FAT copy, which belong to no cluster: the media byte under set bits, and an end mark two of
 * whose bits tell how the volume was last put away.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT Data Structure" (FAT[0], FAT[1],
 * ClnShutBitMask, HrdErrBitMask).
 *
 * @param marked whether both hold what belongs there
 * @param cleanShutdown false where a system marked the volume as in use and never took the mark away
 * @param noHardError false where a system met a read or write error on it
 */
public record FatHead(boolean marked, boolean cleanShutdown, boolean noHardError) {

    /** Of a copy that lies past the end of an image; that the image is cut off is told elsewhere. */
    private static final FatHead MISSING = new FatHead(false, true, true);

    /** @param media byte 21 of the boot sector */
    public static FatHead read(FatTable table, FatType type, int media) throws IOException {
        if (!table.isThere()) {
            return MISSING;
        }
        long second = table.raw(1);
        boolean marked =
                table.raw(0) == first(type, media) && (second | cleanBit(type) | errorBit(type)) >= type.firstEndMark();
        return new FatHead(
                marked, (second & cleanBit(type)) == cleanBit(type), (second & errorBit(type)) == errorBit(type));
    }

    /** What entry 0 holds. */
    public static long first(FatType type, int media) {
        return type.mask() & ~0xFFL | media;
    }

    /** The bit of entry 1 that a system clears while it has the volume in use; 0 on FAT12, which has none. */
    public static long cleanBit(FatType type) {
        return switch (type) {
            case FAT12 -> 0;
            case FAT16 -> 0x8000L;
            case FAT32 -> 0x08000000L;
        };
    }

    /** The bit of entry 1 that a system clears when it meets an error; 0 on FAT12, which has none. */
    public static long errorBit(FatType type) {
        return cleanBit(type) >>> 1;
    }
}
