package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.tukaani.xz.CorruptedInputException;
import org.tukaani.xz.MemoryLimitException;
import org.tukaani.xz.UnsupportedOptionsException;
import org.tukaani.xz.XZFormatException;
import org.tukaani.xz.XZInputStream;

/**
 * What an early file system is packed as, and whether it is whole: cpio archives and packed ones, one behind the other.
 *
 * <p>Sources: the kernel's "initramfs buffer format" page (a row of archives, zeros between them; "newc" headers of 110
 * bytes); RFC 1952 for gzip; RFC 8878, section 3.1, for zstd frames; the .xz file format 1.1.0; lz4 "legacy frame":
 * common practice, no source.
 */
final class InitramfsLook {

    private static final String KIND = "an early file system";
    /** No source: bounds against hostile cards. */
    private static final int MOST_PARTS = 16;

    private static final int MOST_FILES = 200_000;
    private static final int MOST_BLOCKS = 1 << 20;
    private static final long MOST_UNPACKED = 512L << 20;
    private static final int XZ_KIB = 128 << 10;

    private static final int ZSTD = 0xFD2F_B528;
    private static final int LZ4_LEGACY = 0x184C_2102;
    private static final int LZ4_FRAME = 0x184D_2204;
    private static final int CPIO_HEADER = 110;

    private final FileBytes file;
    private final FileNumbers words;
    private final List<String> parts = new ArrayList<>();
    private long at;

    private InitramfsLook(FileBytes file) {
        this.file = file;
        this.words = new FileNumbers(file, ByteOrder.LITTLE_ENDIAN);
    }

    static FileLook of(FileBytes file) throws IOException {
        if (file.size() == 0) {
            return FileLook.cut(KIND, "has no byte");
        }
        try {
            return new InitramfsLook(file).parts();
        } catch (FileNumbers.EndsTooEarly e) {
            return FileLook.cut(KIND, "ends too early: " + e.getMessage());
        }
    }

    private FileLook parts() throws IOException {
        while (skipZeros()) {
            if (parts.size() == MOST_PARTS) {
                return FileLook.unknown(KIND, "holds more archives than are followed");
            }
            byte[] head = file.read(at, 8);
            FileLook bad = part(head);
            if (bad != null) {
                return bad;
            }
            if (at < 0) {
                break;
            }
        }
        return parts.isEmpty()
                ? FileLook.cut(KIND, "holds zeros alone")
                : FileLook.whole(KIND, String.join(", then ", parts));
    }

    /** Moves past zeros; false at the file's end. */
    private boolean skipZeros() throws IOException {
        while (at < file.size()) {
            byte[] piece = file.read(at, 1 << 16);
            if (piece.length == 0) {
                throw new FileNumbers.EndsTooEarly(file.size(), at);
            }
            for (int i = 0; i < piece.length; i++) {
                if (piece[i] != 0) {
                    at += i;
                    return true;
                }
            }
            at += piece.length;
        }
        return false;
    }

    /** Moves past one archive, to -1 where only its beginning tells; what is wrong with it, or null. */
    private FileLook part(byte[] head) throws IOException {
        int magic = head.length < 4
                ? 0
                : ByteBuffer.wrap(head).order(ByteOrder.LITTLE_ENDIAN).getInt(0);
        if (isCpio(head)) {
            return cpio();
        }
        if (GzipLook.isGzip(head)) {
            return ended(GzipLook.of(file, at).look());
        }
        if (magic == ZSTD || magic >>> 4 == 0x184D_2A5) {
            return zstd();
        }
        if (magic == LZ4_LEGACY) {
            return lz4();
        }
        if (head.length >= 6
                && (head[0] & 0xFF) == 0xFD
                && new String(head, 1, 4, StandardCharsets.US_ASCII).equals("7zXZ")) {
            return xz();
        }
        String other = magic == LZ4_FRAME
                ? "lz4"
                : starts(head, "BZh")
                        ? "bzip2"
                        : starts(head, "]\0\0") ? "lzma" : starts(head, "\u0089LZO") ? "lzo" : "";
        if (!other.isEmpty()) {
            parts.add("begins as " + other + ", not unpacked");
            at = -1;
            return null;
        }
        return parts.isEmpty()
                ? FileLook.damaged("of no known kind", "begins as no known kind of early file system")
                : FileLook.damaged(KIND, "holds bytes of no known kind at " + at);
    }

    private static boolean starts(byte[] head, String text) {
        return new String(head, StandardCharsets.ISO_8859_1).startsWith(text);
    }

    /** A packed archive whose unpacking reads to the file's end. */
    private FileLook ended(FileLook look) {
        parts.add(look.check());
        at = -1;
        return look.isWhole() ? null : new FileLook(look.state(), KIND, look.why(), look.check(), look.isCut());
    }

    private static boolean isCpio(byte[] head) {
        return starts(head, "070701") || starts(head, "070702");
    }

    private FileLook cpio() throws IOException {
        for (int files = 0; files < MOST_FILES; files++) {
            byte[] header = words.bytes(at, CPIO_HEADER);
            if (!isCpio(header)) {
                return FileLook.damaged(KIND, "holds a damaged archive: no file header at byte " + at);
            }
            long size = hex(header, 54);
            long nameLength = hex(header, 94);
            if (size < 0 || nameLength < 1 || nameLength > 4096) {
                return FileLook.damaged(KIND, "holds a damaged archive: a file header at byte " + at + " cannot be");
            }
            String name = new String(words.bytes(at + CPIO_HEADER, (int) nameLength), StandardCharsets.ISO_8859_1);
            at = roundUp(at + CPIO_HEADER + nameLength);
            if (name.equals("TRAILER!!!\0")) {
                parts.add("cpio archive of " + files + " files to its end mark");
                return null;
            }
            if (size > file.size() - at) {
                throw new FileNumbers.EndsTooEarly(at + size, file.size());
            }
            at = roundUp(at + size);
        }
        return FileLook.unknown(KIND, "holds more files than are followed");
    }

    private static long hex(byte[] header, int from) {
        try {
            return Long.parseLong(new String(header, from, 8, StandardCharsets.ISO_8859_1), 16);
        } catch (NumberFormatException e) {
            return -1;
        }
    }

    private static long roundUp(long offset) {
        return (offset + 3) / 4 * 4;
    }

    /** Frames by their block headers; the content is not unpacked. */
    private FileLook zstd() throws IOException {
        if (words.at(at, 4).getInt(0) != ZSTD) {
            at += 8 + (words.at(at, 8).getInt(4) & 0xFFFF_FFFFL);
            return null;
        }
        int descriptor = words.at(at + 4, 1).get(0) & 0xFF;
        boolean single = (descriptor & 0x20) != 0;
        int contentSize = new int[] {single ? 1 : 0, 2, 4, 8}[descriptor >>> 6];
        int dictionary = new int[] {0, 1, 2, 4}[descriptor & 3];
        at += 5 + (single ? 0 : 1) + dictionary + contentSize;
        for (int blocks = 1; blocks <= MOST_BLOCKS; blocks++) {
            byte[] bytes = words.bytes(at, 3);
            int header = bytes[0] & 0xFF | (bytes[1] & 0xFF) << 8 | (bytes[2] & 0xFF) << 16;
            int type = header >>> 1 & 3;
            if (type == 3) {
                return FileLook.damaged(KIND, "holds a damaged zstd frame: no block at byte " + at);
            }
            at += 3 + (type == 1 ? 1 : header >>> 3);
            if ((header & 1) != 0) {
                at += (descriptor & 4) != 0 ? 4 : 0;
                if (at > file.size()) {
                    throw new FileNumbers.EndsTooEarly(at, file.size());
                }
                parts.add("zstd frame of " + blocks + " blocks to its last one");
                return null;
            }
        }
        return FileLook.unknown(KIND, "holds more blocks than are followed");
    }

    /** Blocks by their sizes, to the file's end; the content is not unpacked. */
    private FileLook lz4() throws IOException {
        at += 4;
        int blocks = 0;
        while (at < file.size()) {
            if (++blocks > MOST_BLOCKS) {
                return FileLook.unknown(KIND, "holds more blocks than are followed");
            }
            long size = words.at(at, 4).getInt(0) & 0xFFFF_FFFFL;
            at += 4;
            if (size == 0 || size == LZ4_LEGACY) {
                continue;
            }
            if (size > file.size() - at) {
                throw new FileNumbers.EndsTooEarly(at + size, file.size());
            }
            at += size;
        }
        parts.add("lz4 blocks to the file's end");
        at = -1;
        return null;
    }

    private FileLook xz() throws IOException {
        long count = 0;
        byte[] buffer = new byte[1 << 16];
        FileLook look;
        try (XZInputStream in = new XZInputStream(new FileInput(file, at), XZ_KIB)) {
            int got = in.read(buffer);
            while (got >= 0 && count <= MOST_UNPACKED) {
                count += got;
                got = in.read(buffer);
            }
            look = got < 0
                    ? FileLook.whole(KIND, "xz unpacks to " + count + " bytes, its check fits")
                    : FileLook.unknown(
                            KIND, "unpacks to more than " + MOST_UNPACKED + " bytes, which was not followed");
        } catch (MemoryLimitException | UnsupportedOptionsException e) {
            look = FileLook.unknown(KIND, "is packed in a way that is not followed here");
        } catch (EOFException e) {
            look = FileLook.cut(KIND, "ends in the middle of its packed content, after " + count + " unpacked bytes");
        } catch (XZFormatException e) {
            // Only the first stream is an archive; what stands behind it need be none.
            look = count > 0
                    ? FileLook.whole(KIND, "xz unpacks to " + count + " bytes")
                    : FileLook.damaged(KIND, "does not begin as the xz file that its first bytes promise");
        } catch (CorruptedInputException e) {
            look = FileLook.damaged(KIND, "holds damaged packed content after " + count + " unpacked bytes");
        }
        return ended(look);
    }
}
