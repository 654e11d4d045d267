package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Whether an ELF file's segments and sections lie inside it.
 *
 * <p>Source: "Executable and Linking Format (ELF) Specification", version 1.2, book I, "ELF Header", "Sections",
 * "Program Header"; the wider fields of class 2: the 64-bit object file format, common practice, no source.
 */
final class ElfLook {

    private static final String KIND = "an ELF file";
    private static final int IDENTITY = 16;
    private static final int NOTHING = 0;
    private static final int STRINGS = 3;
    private static final int NO_BITS = 8;

    private ElfLook() {}

    static FileLook of(FileBytes file) throws IOException {
        byte[] id = file.read(0, IDENTITY);
        if (id.length < IDENTITY || id[0] != 0x7F || id[1] != 'E' || id[2] != 'L' || id[3] != 'F') {
            return FileLook.damaged("no ELF file", "does not begin as an ELF file");
        }
        if (id[4] < 1 || id[4] > 2 || id[5] < 1 || id[5] > 2 || id[6] != 1) {
            return FileLook.damaged(KIND, "has an ELF header of no known class, byte order or version");
        }
        try {
            return tables(file, id[4] == 2, id[5] == 2 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
        } catch (FileNumbers.EndsTooEarly e) {
            return FileLook.cut(KIND, "ends too early: " + e.getMessage());
        }
    }

    private static FileLook tables(FileBytes file, boolean wide, ByteOrder order) throws IOException {
        FileNumbers words = new FileNumbers(file, order);
        ByteBuffer head = words.at(0, wide ? 64 : 52);
        int counts = wide ? 54 : 42;
        long segmentsAt = offset(head, wide ? 32 : 28, wide);
        long sectionsAt = offset(head, wide ? 40 : 32, wide);
        int segmentSize = half(head, counts);
        int segmentCount = half(head, counts + 2);
        int sectionSize = half(head, counts + 4);
        int sectionCount = half(head, counts + 6);
        int names = half(head, counts + 8);
        if (segmentCount > 0 && segmentSize < (wide ? 56 : 32) || sectionCount > 0 && sectionSize < (wide ? 64 : 40)) {
            return FileLook.damaged(KIND, "has an ELF header whose table sizes cannot be");
        }
        long loaded = 0;
        for (int i = 0; i < segmentCount; i++) {
            ByteBuffer segment = words.at(segmentsAt + (long) i * segmentSize, segmentSize);
            if (segment.getInt(0) != NOTHING) {
                long from = offset(segment, wide ? 8 : 4, wide);
                long length = offset(segment, wide ? 32 : 16, wide);
                reach(file, from, length);
                loaded += length;
            }
        }
        for (int i = 0; i < sectionCount; i++) {
            ByteBuffer section = words.at(sectionsAt + (long) i * sectionSize, sectionSize);
            int type = section.getInt(4);
            if (type != NOTHING && type != NO_BITS) {
                reach(file, offset(section, wide ? 24 : 16, wide), offset(section, wide ? 32 : 20, wide));
            }
            if (i == names && names != 0 && type != STRINGS) {
                return FileLook.damaged(KIND, "has a damaged table of sections");
            }
        }
        if (loaded == 0) {
            return FileLook.damaged(KIND, "loads nothing: none of its segments holds a byte");
        }
        return FileLook.whole(
                KIND,
                "ELF header, " + counted(segmentCount, "segment") + " and " + counted(sectionCount, "section")
                        + " lie inside the file");
    }

    private static void reach(FileBytes file, long from, long length) throws FileNumbers.EndsTooEarly {
        if (from < 0 || length < 0 || from > file.size() || length > file.size() - from) {
            throw new FileNumbers.EndsTooEarly(from < 0 || length < 0 ? Long.MAX_VALUE : from + length, file.size());
        }
    }

    private static long offset(ByteBuffer bytes, int at, boolean wide) {
        return wide ? bytes.getLong(at) : bytes.getInt(at) & 0xFFFF_FFFFL;
    }

    private static int half(ByteBuffer bytes, int at) {
        return bytes.getShort(at) & 0xFFFF;
    }

    private static String counted(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
