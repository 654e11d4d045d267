package bootmend.fat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The slots that give a new file or folder its name: an 8.3 name, and before it the slots of a long name where that name
 * is not an 8.3 name with each half in one case.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT Long Directory Entries" and "Short Directory
 * Entry", the numeric tail among them; the two case flags: value from memory.
 *
 * @param stored the eleven bytes of the 8.3 name
 * @param caseFlags byte 12 of the entry
 * @param longSlots slots of 32 bytes in the order in which they stand before the entry; none where there is no long name
 */
record NewName(byte[] stored, int caseFlags, List<byte[]> longSlots) {

    private static final String BESIDE_LETTERS = "0123456789$%'-_@~!(){}^#&";
    private static final int LONGEST = 255;
    private static final int BASE = 8;
    private static final int EXTENSION = 3;
    private static final int LOWER_BASE = 0x08;
    private static final int LOWER_EXTENSION = 0x10;
    private static final int IN_SLOT = 13;
    private static final int LAST = 0x40;
    private static final int ATTRIBUTES = 11;
    private static final int CHECKSUM = 13;
    private static final int[] CHARACTER_OFFSETS = {1, 3, 5, 7, 9, 14, 16, 18, 20, 22, 24, 28, 30};
    private static final int MOST_TAIL = 999_999;

    NewName {
        longSlots = List.copyOf(longSlots);
    }

    /** Slots that it takes, the entry among them. */
    int slots() {
        return longSlots.size() + 1;
    }

    /**
     * The name's slots.
     *
     * @param taken 8.3 names that the folder has, in upper case
     * @throws BadVolumeException where it is no name that a FAT folder can hold
     */
    static NewName of(String name, Set<String> taken) throws BadVolumeException {
        boolean odd = name.isEmpty()
                || name.length() > LONGEST
                || name.endsWith(".")
                || name.endsWith(" ")
                || name.chars().anyMatch(c -> c < ' ' || c == 0x7F || "\"*/:<>?\\|".indexOf(c) >= 0);
        if (odd) {
            throw new BadVolumeException("no file can have the name " + name);
        }
        Optional<NewName> plain = plain(name);
        if (plain.isPresent()) {
            return plain.get();
        }
        byte[] alias = alias(name, taken);
        return new NewName(alias, 0, longSlots(name, new ShortName(alias, 0).checksum()));
    }

    /** Where an 8.3 name says it all. */
    private static Optional<NewName> plain(String name) {
        int dot = name.lastIndexOf('.');
        String base = dot < 0 ? name : name.substring(0, dot);
        String extension = dot < 0 ? "" : name.substring(dot + 1);
        boolean fits = !base.isEmpty()
                && base.length() <= BASE
                && extension.length() <= EXTENSION
                && (dot < 0 || !extension.isEmpty())
                && isPlain(base)
                && isPlain(extension);
        if (!fits) {
            return Optional.empty();
        }
        int flags = (isLower(base) ? LOWER_BASE : 0) | (isLower(extension) ? LOWER_EXTENSION : 0);
        return Optional.of(new NewName(padded(base, extension), flags, List.of()));
    }

    /** Letters of one case, and what else an 8.3 name may hold. */
    private static boolean isPlain(String part) {
        boolean known = part.chars().allMatch(c -> isLetter(c) || BESIDE_LETTERS.indexOf(c) >= 0);
        boolean upper = part.chars().noneMatch(c -> c >= 'a' && c <= 'z');
        return known && (upper || isLower(part));
    }

    private static boolean isLower(String part) {
        return part.chars().anyMatch(c -> c >= 'a' && c <= 'z') && part.chars().noneMatch(c -> c >= 'A' && c <= 'Z');
    }

    private static boolean isLetter(int c) {
        return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z';
    }

    private static byte[] padded(String base, String extension) {
        return String.format(Locale.ROOT, "%-8s%-3s", base, extension)
                .toUpperCase(Locale.ROOT)
                .getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] alias(String name, Set<String> taken) throws BadVolumeException {
        String lean = name.replace(" ", "").replaceFirst("^\\.+", "");
        int dot = lean.lastIndexOf('.');
        String base = cleaned(dot < 0 ? lean : lean.substring(0, dot).replace(".", ""));
        String extension = dot < 0 ? "" : cleaned(lean.substring(dot + 1));
        String shortened = extension.substring(0, Math.min(EXTENSION, extension.length()));
        for (int tail = 1; tail <= MOST_TAIL; tail++) {
            String number = "~" + tail;
            String stem = base.substring(0, Math.min(BASE - number.length(), base.length())) + number;
            if (!taken.contains(stem + (shortened.isEmpty() ? "" : "." + shortened))) {
                return padded(stem, shortened);
            }
        }
        throw new BadVolumeException("every 8.3 name for " + name + " is taken");
    }

    private static String cleaned(String part) {
        StringBuilder clean = new StringBuilder();
        for (int i = 0; i < part.length(); i++) {
            char c = part.charAt(i);
            boolean letter = isLetter(c);
            clean.append(letter || BESIDE_LETTERS.indexOf(c) >= 0 ? c : '_');
        }
        return clean.toString().toUpperCase(Locale.ROOT);
    }

    private static List<byte[]> longSlots(String name, int checksum) {
        int count = (name.length() + IN_SLOT - 1) / IN_SLOT;
        List<byte[]> slots = new ArrayList<>();
        for (int number = count; number >= 1; number--) {
            ByteBuffer slot = ByteBuffer.allocate(Geometry.SLOT_BYTES).order(ByteOrder.LITTLE_ENDIAN);
            slot.put(0, (byte) (number | (number == count ? LAST : 0)));
            slot.put(ATTRIBUTES, (byte) Slot.ATTRIBUTE_LONG_NAME).put(CHECKSUM, (byte) checksum);
            for (int i = 0; i < IN_SLOT; i++) {
                int at = (number - 1) * IN_SLOT + i;
                char c = at < name.length() ? name.charAt(at) : at == name.length() ? '\0' : '\uFFFF';
                slot.putChar(CHARACTER_OFFSETS[i], c);
            }
            slots.add(slot.array());
        }
        return slots;
    }
}
