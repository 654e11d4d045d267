package bootmend.fat;

/**
 * Where an entry of the table lies and which bits of its bytes are its own.
 *
 * @param offset first byte, from the volume's start
 * @param bytes 2 or 4; a FAT12 entry's two bytes may lie in two sectors
 * @param shift bits to the right of the entry in those bytes
 * @param mask the entry's own bits after shifting
 */
record EntryPlace(long offset, int bytes, int shift, long mask) {

    static EntryPlace of(Geometry geometry, int copy, long cluster) {
        long start = geometry.fatStart(copy);
        return switch (geometry.type()) {
            case FAT12 -> new EntryPlace(start + cluster + cluster / 2, 2, cluster % 2 == 0 ? 0 : 4, 0xFFF);
            case FAT16 -> new EntryPlace(start + cluster * 2, 2, 0, 0xFFFF);
            case FAT32 -> new EntryPlace(start + cluster * 4, 4, 0, 0x0FFFFFFF);
        };
    }

    /** The entry's value out of its bytes read little-endian. */
    long value(long raw) {
        return raw >>> shift & mask;
    }

    /** The bytes with the entry's own bits replaced and all others kept. */
    long with(long raw, long value) {
        return raw & ~(mask << shift) | (value & mask) << shift;
    }
}
