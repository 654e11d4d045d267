package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A device tree blob, walked from end to end; what is kept are the properties of the nodes right below the root.
 *
 * <p>Source: Devicetree Specification 0.4, chapter 5, "Flattened Devicetree (DTB) Format".
 *
 * @param look what the walk came to
 * @param nodes properties by name, by node name; empty unless the blob is whole
 */
record FlatTree(FileLook look, Map<String, Map<String, byte[]>> nodes) {

    private static final String KIND = "a device tree";
    private static final int MAGIC = 0xD00D_FEED;
    private static final int HEADER = 40;
    /** No source: bounds against hostile cards; the largest published trees have some 100 kB. */
    private static final int MOST_BYTES = 4 << 20;

    private static final int MOST_DEPTH = 64;
    private static final int BEGIN_NODE = 1;
    private static final int END_NODE = 2;
    private static final int PROPERTY = 3;
    private static final int NOTHING = 4;
    private static final int END = 9;
    private static final long WORD = 0xFFFF_FFFFL;

    static FlatTree of(FileBytes file) throws IOException {
        byte[] head = file.read(0, HEADER);
        if (head.length < HEADER) {
            return new FlatTree(
                    FileLook.cut(KIND, "has " + file.size() + " bytes, fewer than a device tree's header"), Map.of());
        }
        ByteBuffer header = ByteBuffer.wrap(head).order(ByteOrder.BIG_ENDIAN);
        if (header.getInt(0) != MAGIC) {
            return new FlatTree(
                    FileLook.damaged(
                            "no device tree", String.format("begins with 0x%08x, not 0xd00dfeed", header.getInt(0))),
                    Map.of());
        }
        long total = header.getInt(4) & WORD;
        if (total > file.size()) {
            return new FlatTree(
                    FileLook.cut(KIND, "has " + file.size() + " bytes, but its header says " + total), Map.of());
        }
        if (total > MOST_BYTES) {
            return new FlatTree(FileLook.unknown(KIND, "has " + total + " bytes, too many to follow"), Map.of());
        }
        byte[] bytes = file.read(0, (int) total);
        if (bytes.length < total) {
            return new FlatTree(FileLook.cut(KIND, "cannot be read past byte " + bytes.length), Map.of());
        }
        long structureEnd = (header.getInt(8) & WORD) + (header.getInt(36) & WORD);
        long stringsEnd = (header.getInt(12) & WORD) + (header.getInt(32) & WORD);
        if (total < HEADER || structureEnd > total || stringsEnd > total || (header.getInt(16) & WORD) > total) {
            return new FlatTree(
                    FileLook.damaged(KIND, "names blocks past its own end of " + total + " bytes"), Map.of());
        }
        return new Walk(bytes, header).tree();
    }

    /** The walk over the structure block; every step reads at least one word, so it ends. */
    private static final class Walk {

        private final byte[] raw;
        private final ByteBuffer all;
        private final int structureEnd;
        private final int stringsAt;
        private final int stringsEnd;
        private int at;
        private final Map<String, Map<String, byte[]>> nodes = new LinkedHashMap<>();

        Walk(byte[] bytes, ByteBuffer header) {
            raw = bytes;
            all = ByteBuffer.wrap(bytes).order(ByteOrder.BIG_ENDIAN);
            at = header.getInt(8);
            structureEnd = at + header.getInt(36);
            stringsAt = header.getInt(12);
            stringsEnd = stringsAt + header.getInt(32);
        }

        FlatTree tree() {
            int depth = 0;
            Map<String, byte[]> current = null;
            while (at >= 0 && at + 4 <= structureEnd) {
                int token = all.getInt(at);
                at += 4;
                switch (token) {
                    case BEGIN_NODE -> {
                        String name = text(at, structureEnd);
                        if (name == null || ++depth > MOST_DEPTH) {
                            return broken();
                        }
                        at = (at + name.length() + 1 + 3) / 4 * 4;
                        if (depth == 2) {
                            current = nodes.computeIfAbsent(name, none -> new LinkedHashMap<>());
                        }
                    }
                    case END_NODE -> {
                        if (--depth < 0) {
                            return broken();
                        }
                        current = depth == 2 ? current : null;
                    }
                    case PROPERTY -> {
                        if (depth < 1 || at + 8 > structureEnd) {
                            return broken();
                        }
                        int length = all.getInt(at);
                        int nameAt = all.getInt(at + 4);
                        at += 8;
                        String name = nameAt < 0 ? null : text((long) stringsAt + nameAt, stringsEnd);
                        if (length < 0 || length > structureEnd - at || name == null) {
                            return broken();
                        }
                        if (depth == 2 && current != null) {
                            byte[] value = new byte[length];
                            all.get(at, value);
                            current.put(name, value);
                        }
                        at = (at + length + 3) / 4 * 4;
                    }
                    case NOTHING -> {
                        // Left where something was taken out.
                    }
                    case END -> {
                        return depth == 0
                                ? new FlatTree(
                                        FileLook.whole(
                                                KIND, "device tree header and its structure to the end of its nodes"),
                                        nodes)
                                : broken();
                    }
                    default -> {
                        return broken();
                    }
                }
            }
            return broken();
        }

        private FlatTree broken() {
            return new FlatTree(
                    FileLook.damaged(
                            KIND, "is no device tree past byte " + Math.max(0, at) + ": its nodes do not close"),
                    Map.of());
        }

        /** The text up to its zero byte; null where there is none. */
        private String text(long from, int end) {
            for (long i = from; i >= 0 && i < end; i++) {
                if (all.get((int) i) == 0) {
                    return new String(raw, (int) from, (int) (i - from), StandardCharsets.ISO_8859_1);
                }
            }
            return null;
        }
    }
}
