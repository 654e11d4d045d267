package bootmend.check;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;

/** Tells from a file's first bytes what it is. */
final class BootFileHead {

    private static final int ELF_IDENTITY = 16;
    private static final int DEVICE_TREE_HEADER = 40;
    private static final int DEVICE_TREE_MAGIC = 0xD00D_FEED;
    private static final int IMAGE_64_MAGIC = 0x644D_5241;
    private static final int IMAGE_64_MAGIC_AT = 56;
    private static final int IMAGE_32_MAGIC = 0x016F_2818;
    private static final int IMAGE_32_MAGIC_AT = 0x24;
    private static final long WORD = 0xFFFF_FFFFL;

    /** What a kernel file is. */
    enum Kernel {
        IMAGE_64("a 64-bit image"),
        GZIP("a gzip file, as 64-bit kernels are packed"),
        IMAGE_32("a 32-bit image"),
        NONE("of no known kind");

        private final String words;

        Kernel(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    private BootFileHead() {}

    /** Magic, class, byte order and version; source: ELF specification 1.2, book I, "ELF Identification". */
    static boolean isElf(byte[] head) {
        return head.length >= ELF_IDENTITY
                && head[0] == 0x7F
                && head[1] == 'E'
                && head[2] == 'L'
                && head[3] == 'F'
                && isOneOrTwo(head[4])
                && isOneOrTwo(head[5])
                && head[6] == 1;
    }

    private static boolean isOneOrTwo(byte value) {
        return value == 1 || value == 2;
    }

    /**
     * What is wrong with a device tree's header, in words that follow "The file"; empty where nothing is.
     *
     * <p>Source: Devicetree Specification 0.4, section 5.2.
     *
     * @param size bytes of the whole file
     */
    static Optional<String> deviceTreeProblem(byte[] head, long size) {
        if (head.length < DEVICE_TREE_HEADER) {
            return Optional.of("has " + size + " bytes, fewer than a device tree's header");
        }
        ByteBuffer header = ByteBuffer.wrap(head).order(ByteOrder.BIG_ENDIAN);
        if (header.getInt(0) != DEVICE_TREE_MAGIC) {
            return Optional.of(String.format("begins with 0x%08x, not 0xd00dfeed", header.getInt(0)));
        }
        long total = header.getInt(4) & WORD;
        if (total > size || total < DEVICE_TREE_HEADER) {
            return Optional.of("has " + size + " bytes, but its header says " + total);
        }
        long structureEnd = (header.getInt(8) & WORD) + (header.getInt(36) & WORD);
        long stringsEnd = (header.getInt(12) & WORD) + (header.getInt(32) & WORD);
        return structureEnd > total || stringsEnd > total
                ? Optional.of("names blocks past its own end of " + total + " bytes")
                : Optional.empty();
    }

    /**
     * The kind of a kernel.
     *
     * <p>Sources: 0x644d5241 at 56: the kernel's arm64 boot protocol page; gzip with method 8: RFC 1952, section
     * 2.3.1; 0x016f2818 at 0x24: value from memory, the kernel's arm boot page.
     */
    static Kernel kernel(byte[] head) {
        ByteBuffer header = ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN);
        if (head.length >= IMAGE_64_MAGIC_AT + 4 && header.getInt(IMAGE_64_MAGIC_AT) == IMAGE_64_MAGIC) {
            return Kernel.IMAGE_64;
        }
        if (head.length >= IMAGE_32_MAGIC_AT + 4 && header.getInt(IMAGE_32_MAGIC_AT) == IMAGE_32_MAGIC) {
            return Kernel.IMAGE_32;
        }
        boolean gzip = head.length >= 3 && head[0] == 0x1F && head[1] == (byte) 0x8B && head[2] == 8;
        return gzip ? Kernel.GZIP : Kernel.NONE;
    }
}
