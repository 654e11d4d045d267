package bootmend.fat;

/** The three widths of a FAT entry, with the values that end a chain and mark a bad cluster. */
public enum FatType {
    FAT12(12, 0xFFFL),
    FAT16(16, 0xFFFFL),
    FAT32(32, 0x0FFFFFFFL);

    /** Below this many clusters a volume is FAT12; source: "FAT: General Overview", "FAT Type Determination". */
    static final long FAT12_LIMIT = 4085;
    /** Below this many clusters a volume is FAT16; same source. */
    static final long FAT16_LIMIT = 65525;

    private final int bits;
    private final long mask;

    FatType(int bits, long mask) {
        this.bits = bits;
        this.mask = mask;
    }

    /** The type of a volume with that many clusters; nothing else decides it. */
    static FatType ofClusterCount(long clusters) {
        if (clusters < FAT12_LIMIT) {
            return FAT12;
        }
        return clusters < FAT16_LIMIT ? FAT16 : FAT32;
    }

    /** Bits that an entry takes in the table; four of FAT32's 32 are reserved. */
    public int bits() {
        return bits;
    }

    /** The bits of an entry that carry its value. */
    long mask() {
        return mask;
    }

    /** The mark that this project writes at the end of a chain. */
    public long endMark() {
        return mask;
    }

    /** The lowest value that ends a chain. */
    long firstEndMark() {
        return mask - 7;
    }

    public long badMark() {
        return mask - 8;
    }
}
