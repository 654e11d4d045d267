package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * What a kernel file is, and whether it is whole by what its own header says.
 *
 * <p>Sources: the kernel's arm64 boot protocol page (magic at 56, image size at 16, which counts memory that no file
 * holds); the kernel's arm boot page (magic at 0x24, start and end words after it: value from memory); the section table
 * of images that also carry a PE header: "PE Format" of the object file standard, value from memory; gzip: RFC 1952.
 */
record KernelLook(Kind kind, FileLook look) {

    /** What it is. */
    enum Kind {
        IMAGE_64,
        GZIP_64,
        IMAGE_32,
        /** A program without a kernel's header that begins with a branch, such as a second-stage loader. */
        PROGRAM,
        OTHER
    }

    private static final int HEAD = 512;
    private static final int MAGIC_64 = 0x644D_5241;
    private static final int MAGIC_32 = 0x016F_2818;
    private static final int PE = 0x0000_4550;
    private static final int MOST_SECTIONS = 64;
    private static final String IMAGE_64 = "a 64-bit kernel image";
    private static final String IMAGE_32 = "a 32-bit kernel image";

    boolean is64() {
        return kind == Kind.IMAGE_64 || kind == Kind.GZIP_64;
    }

    static KernelLook of(FileBytes file) throws IOException {
        byte[] head = file.read(0, HEAD);
        if (GzipLook.isGzip(head)) {
            return gzip(file);
        }
        if (isImage64(head)) {
            return new KernelLook(Kind.IMAGE_64, image64(file, head));
        }
        if (isImage32(head)) {
            return new KernelLook(Kind.IMAGE_32, image32(file, head));
        }
        return other(file, head);
    }

    private static boolean isImage64(byte[] head) {
        return head.length >= 64 && little(head).getInt(56) == MAGIC_64;
    }

    private static boolean isImage32(byte[] head) {
        return head.length >= 48 && little(head).getInt(0x24) == MAGIC_32;
    }

    private static KernelLook gzip(FileBytes file) throws IOException {
        GzipLook gzip = GzipLook.of(file, 0);
        if (!gzip.look().isWhole()) {
            return new KernelLook(Kind.GZIP_64, gzip.look());
        }
        if (!isImage64(gzip.head())) {
            return new KernelLook(
                    Kind.OTHER,
                    FileLook.unknown(
                            "a gzip file", "is a gzip file, but what is packed in it is no 64-bit kernel image"));
        }
        return new KernelLook(
                Kind.GZIP_64,
                FileLook.whole(
                        "a 64-bit kernel image in a gzip file", gzip.look().check()));
    }

    private static FileLook image64(FileBytes file, byte[] head) throws IOException {
        ByteBuffer words = little(head);
        long memory = words.getLong(16);
        if (head[0] == 'M' && head[1] == 'Z') {
            try {
                long end = peEnd(file, words.getInt(60) & 0xFFFF_FFFFL);
                if (end > file.size()) {
                    return FileLook.cut(
                            IMAGE_64, "ends too early: its header counts " + end + " bytes, it has " + file.size());
                }
                if (end > 0) {
                    return FileLook.whole(IMAGE_64, "arm64 header, and every section it lists lies inside the file");
                }
            } catch (FileNumbers.EndsTooEarly e) {
                return FileLook.cut(IMAGE_64, "ends inside its own header");
            }
        }
        // A kernel's memory without bytes in the file is a small share of it; half is far from any.
        if (memory > 0 && file.size() < memory / 2) {
            return FileLook.cut(
                    IMAGE_64,
                    "ends too early: its header asks for " + memory + " bytes of memory, it has " + file.size());
        }
        return ZeroSpots.in(file, IMAGE_64, "arm64 header; its size fits " + memory + " bytes of memory");
    }

    /** Where the last section that has bytes in the file ends; 0 where there is no such table. */
    private static long peEnd(FileBytes file, long at) throws IOException {
        FileNumbers words = new FileNumbers(file, ByteOrder.LITTLE_ENDIAN);
        ByteBuffer header = words.at(at, 24);
        int sections = header.getShort(6) & 0xFFFF;
        if (header.getInt(0) != PE || sections > MOST_SECTIONS) {
            return 0;
        }
        long table = at + 24 + (header.getShort(20) & 0xFFFF);
        long end = 0;
        for (int i = 0; i < sections; i++) {
            ByteBuffer section = words.at(table + i * 40L, 40);
            end = Math.max(end, (section.getInt(16) & 0xFFFF_FFFFL) + (section.getInt(20) & 0xFFFF_FFFFL));
        }
        return end;
    }

    private static FileLook image32(FileBytes file, byte[] head) throws IOException {
        ByteBuffer words = little(head);
        long length = (words.getInt(0x2C) & 0xFFFF_FFFFL) - (words.getInt(0x28) & 0xFFFF_FFFFL);
        if (length <= 0) {
            return FileLook.unknown(IMAGE_32, "has a kernel header that does not give its length");
        }
        if (length > file.size()) {
            return FileLook.cut(
                    IMAGE_32, "ends too early: its header counts " + length + " bytes, it has " + file.size());
        }
        return ZeroSpots.in(file, IMAGE_32, "zImage header, and its " + length + " bytes are there");
    }

    private static KernelLook other(FileBytes file, byte[] head) throws IOException {
        FileLook zeros = ZeroSpots.in(file, "a program", "begins as a program, has no kernel header");
        if (head.length < 4 || zeros.state() == LinkState.DAMAGED) {
            return new KernelLook(
                    Kind.OTHER, head.length < 4 ? FileLook.cut("no kernel", "has " + head.length + " bytes") : zeros);
        }
        if (isText(head)) {
            return new KernelLook(Kind.OTHER, FileLook.damaged("a text", "is a text, no kernel"));
        }
        int first = little(head).getInt(0);
        // An unconditional branch: 0xEA...... in 32-bit code, the six bits 000101 in 64-bit code.
        if (first >>> 24 == 0xEA || first >>> 26 == 0x05) {
            return new KernelLook(Kind.PROGRAM, zeros);
        }
        return new KernelLook(
                Kind.OTHER,
                FileLook.unknown("of no known kind", "begins like no known kind of kernel; a program of its own may"));
    }

    private static boolean isText(byte[] head) {
        for (byte each : head) {
            if (each < ' ' && each != '\n' && each != '\r' && each != '\t') {
                return false;
            }
        }
        return true;
    }

    private static ByteBuffer little(byte[] head) {
        return ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN);
    }
}
