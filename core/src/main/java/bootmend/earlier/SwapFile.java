package bootmend.earlier;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The text in the swap file of a vi-like editor: blocks of one size, the first with the editor's mark, the second with
 * pointers, the others with lines. Who edited which file on which computer stands in it too and is left alone.
 *
 * <p>Value from memory, and compared with swap files that such an editor wrote on a 64-bit computer; numbers are
 * little-endian, and a line count takes 8 bytes there and 4 on a 32-bit one.
 */
final class SwapFile {

    private static final int MARK = 'b' | '0' << 8;
    private static final int POINTERS = 't' | 'p' << 8;
    private static final int LINES = 'a' | 'd' << 8;
    private static final int PAGE_SIZE_AT = 12;
    private static final int LEAST_PAGE = 512;
    private static final int MOST_PAGE = 65_536;
    private static final int FLAG = 0x7FFF_FFFF;

    private final ByteBuffer bytes;
    private final int page;

    private SwapFile(byte[] bytes) {
        this.bytes = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        int size = bytes.length < LEAST_PAGE || u16(0) != MARK ? 0 : this.bytes.getInt(PAGE_SIZE_AT);
        this.page = size >= LEAST_PAGE && size <= MOST_PAGE ? size : 0;
    }

    /** The text that was being edited, its lines ended by LF; empty where the file is none, or not all of it is there. */
    static Optional<byte[]> text(byte[] bytes) {
        SwapFile file = new SwapFile(bytes);
        return file.page == 0 ? Optional.empty() : file.wide().or(file::narrow);
    }

    private Optional<byte[]> wide() {
        return text(8);
    }

    private Optional<byte[]> narrow() {
        return text(4);
    }

    /** @param width bytes of a line count and of a block's number */
    private Optional<byte[]> text(int width) {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        if (bytes.capacity() < 2 * page || u16(page) != POINTERS) {
            return Optional.empty();
        }
        int count = u16(page + 2);
        int entries = page + 8;
        int entryBytes = width == 8 ? 32 : 16;
        if (count < 1 || (long) count * entryBytes > page - 8) {
            return Optional.empty();
        }
        for (int i = 0; i < count; i++) {
            long block = number(entries + i * entryBytes, width);
            if (block < 2 || block >= bytes.capacity() / page) {
                return Optional.empty();
            }
            Optional<List<byte[]>> lines = lines((int) block * page, width);
            if (lines.isEmpty()) {
                return Optional.empty();
            }
            for (byte[] line : lines.get()) {
                text.writeBytes(line);
                text.write('\n');
            }
        }
        return Optional.of(text.toByteArray());
    }

    /** The lines of one block, which stand in it from its end towards its start. */
    private Optional<List<byte[]>> lines(int at, int width) {
        int index = 16 + width;
        long count = number(at + 16, width);
        long end = bytes.getInt(at + 12);
        if (u16(at) != LINES || count < 1 || count > (page - index) / 4 || end > page) {
            return Optional.empty();
        }
        List<byte[]> lines = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int start = bytes.getInt(at + index + 4 * i) & FLAG;
            if (start < index + 4 * count || start >= end || bytes.get(at + (int) end - 1) != 0) {
                return Optional.empty();
            }
            byte[] line = new byte[(int) end - 1 - start];
            bytes.get(at + start, line);
            lines.add(line);
            end = start;
        }
        return Optional.of(lines);
    }

    private int u16(int at) {
        return bytes.getShort(at) & 0xFFFF;
    }

    private long number(int at, int width) {
        return width == 8 ? bytes.getLong(at) : bytes.getInt(at);
    }
}
