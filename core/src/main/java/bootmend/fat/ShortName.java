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

    /** Byte 12 of an entry whose whole name is shown in lower case. */
    static final byte ALL_LOWER = LOWER_BASE | LOWER_EXTENSION;

    private final byte[] raw;
    private final int caseFlags;

    /** @param caseFlags byte 12 of the entry */
    ShortName(byte[] raw, int caseFlags) {
        this.raw = Arrays.copyOf(raw, LENGTH);
        this.caseFlags = caseFlags;
    }

    /** The eleven bytes that store an 8.3 name of ASCII characters with one dot, whatever its case. */
    static byte[] stored(String name) {
        int dot = name.lastIndexOf('.');
        String base = name.substring(0, dot);
        String extension = name.substring(dot + 1);
        String padded = String.format(Locale.ROOT, "%-8s%-3s", base, extension).toUpperCase(Locale.ROOT);
        if (padded.length() != LENGTH) {
            throw new IllegalArgumentException("no 8.3 name: " + name);
        }
        return padded.getBytes(StandardCharsets.US_ASCII);
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

    /** The name of a deleted entry, whose first character is gone. */
    String displayDeleted() {
        return "?" + withFirst((byte) 'X').display().substring(1);
    }

    /** The same with another first character. */
    ShortName withFirst(byte first) {
        byte[] other = raw.clone();
        other[0] = first;
        return new ShortName(other, caseFlags);
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
