package bootmend.fat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;

/** The 8.3 name of a directory entry, with the two flags that show its halves in lower case. */
final class ShortName {

    static final int LENGTH = 11;
    private static final int BASE = 8;
    /** A name that begins with E5 is stored with 05, because E5 marks a deleted entry. */
    private static final int STORED_E5 = 0x05;
    private static final int LOWER_BASE = 0x08;
    private static final int LOWER_EXTENSION = 0x10;

    private final byte[] raw;
    private final int caseFlags;

    /** @param caseFlags byte 12 of the entry */
    ShortName(byte[] raw, int caseFlags) {
        this.raw = Arrays.copyOf(raw, LENGTH);
        this.caseFlags = caseFlags;
    }

    /** The name as it is shown, such as {@code config.txt}; bytes over 127 are read as ISO 8859-1. */
    String display() {
        byte[] name = raw.clone();
        if (name[0] == STORED_E5) {
            name[0] = (byte) 0xE5;
        }
        String base = part(name, 0, BASE, LOWER_BASE);
        String extension = part(name, BASE, LENGTH, LOWER_EXTENSION);
        return extension.isEmpty() ? base : base + "." + extension;
    }

    /** The sum that ties long-name slots to this name; source: "FAT: General Overview", "ChkSum". */
    int checksum() {
        int sum = 0;
        for (byte b : raw) {
            sum = ((sum & 1) << 7) + (sum >> 1) + (b & 0xFF) & 0xFF;
        }
        return sum;
    }

    private String part(byte[] name, int from, int to, int lowerFlag) {
        String text = new String(name, from, to - from, StandardCharsets.ISO_8859_1).stripTrailing();
        return (caseFlags & lowerFlag) == 0 ? text : text.toLowerCase(Locale.ROOT);
    }
}
