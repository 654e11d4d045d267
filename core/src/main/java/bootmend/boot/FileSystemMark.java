package bootmend.boot;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * What file system a partition holds, by its superblock.
 *
 * <p>Sources: the kernel, Documentation/filesystems/ext4/super.rst, commit 14e77332; include/linux/f2fs_fs.h, commit
 * 0040b933; fs/btrfs/ctree.h, commit 0019f10d; "FAT: General Overview of On-Disk Format", version 1.03, boot sector
 * fields. That the ext superblock stands at 1024, the feature bits, the size fields of f2fs and btrfs, and the marks of
 * other systems are values from memory.
 *
 * @param kind what it is
 * @param id what {@code UUID=} names it by, in lower case
 * @param label what {@code LABEL=} names it by
 * @param bytes how long it is by its own count, on this partition
 * @param hasErrors whether it carries the mark of errors that its last user found
 */
record FileSystemMark(Kind kind, Optional<String> id, Optional<String> label, OptionalLong bytes, boolean hasErrors) {

    /** What a partition holds. */
    enum Kind {
        EXT2("ext2"),
        EXT3("ext3"),
        EXT4("ext4"),
        F2FS("f2fs"),
        BTRFS("btrfs"),
        FAT("vfat"),
        XFS("xfs"),
        SQUASHFS("squashfs"),
        EROFS("erofs"),
        /** Opened by an early file system before the root is seen. */
        CONTAINER("an encrypted or pooled volume"),
        SWAP("swap space"),
        ZEROS("nothing but zeros"),
        OTHER("no file system that is known here");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }

        boolean isExt() {
            return this == EXT2 || this == EXT3 || this == EXT4;
        }

        /** Whether a kernel can mount it as its root by itself. */
        boolean canBeRoot() {
            return this != CONTAINER && this != SWAP && this != ZEROS && this != OTHER;
        }
    }

    private static final int HEAD = 4096;
    private static final int SUPER = 0x400;
    private static final int BTRFS_AT = 0x10000;
    private static final int LARGEST_BLOCK = 16;

    /** Empty where the card does not reach to the partition's first bytes. */
    static Optional<FileSystemMark> read(BootCard card, CardPartition partition) throws IOException {
        Optional<byte[]> head = card.bytes(partition, 0, (int) Math.min(HEAD, Math.max(0, partition.length())));
        if (head.isEmpty()) {
            return Optional.empty();
        }
        byte[] start = head.get().length < HEAD ? Arrays.copyOf(head.get(), HEAD) : head.get();
        ByteBuffer bytes = ByteBuffer.wrap(start).order(ByteOrder.LITTLE_ENDIAN);
        if ((bytes.getShort(SUPER + 0x38) & 0xFFFF) == 0xEF53) {
            return Optional.of(ext(bytes));
        }
        if (bytes.getInt(SUPER) == 0xF2F5_2010) {
            return Optional.of(f2fs(bytes));
        }
        Optional<FileSystemMark> btrfs = card.bytes(partition, BTRFS_AT, HEAD).flatMap(FileSystemMark::btrfs);
        return Optional.of(btrfs.orElseGet(() -> other(bytes, start)));
    }

    private static FileSystemMark ext(ByteBuffer bytes) {
        int incompatible = bytes.getInt(SUPER + 0x60);
        long blocks = bytes.getInt(SUPER + 4) & 0xFFFF_FFFFL;
        if ((incompatible & 0x80) != 0) {
            blocks |= (bytes.getInt(SUPER + 0x150) & 0xFFFF_FFFFL) << 32;
        }
        Kind kind =
                (incompatible & 0x2C0) != 0 ? Kind.EXT4 : (bytes.getInt(SUPER + 0x5C) & 4) != 0 ? Kind.EXT3 : Kind.EXT2;
        return new FileSystemMark(
                kind,
                Optional.of(printed(bytes, SUPER + 0x68)),
                text(bytes, SUPER + 0x78, 16),
                product(blocks, 10L + (bytes.getInt(SUPER + 0x18) & 0xFFFF_FFFFL)),
                (bytes.getShort(SUPER + 0x3A) & 2) != 0);
    }

    private static FileSystemMark f2fs(ByteBuffer bytes) {
        StringBuilder label = new StringBuilder();
        for (int at = SUPER + 0x7C; at < SUPER + 0x7C + 1024 && bytes.getShort(at) != 0; at += 2) {
            label.append(bytes.getChar(at));
        }
        return new FileSystemMark(
                Kind.F2FS,
                Optional.of(printed(bytes, SUPER + 0x6C)),
                label.isEmpty() ? Optional.empty() : Optional.of(label.toString()),
                product(bytes.getLong(SUPER + 36), bytes.getInt(SUPER + 16) & 0xFFFF_FFFFL),
                false);
    }

    private static Optional<FileSystemMark> btrfs(byte[] block) {
        ByteBuffer bytes = ByteBuffer.wrap(block).order(ByteOrder.LITTLE_ENDIAN);
        if (!new String(block, 0x40, 8, StandardCharsets.ISO_8859_1).equals("_BHRfS_M")) {
            return Optional.empty();
        }
        long own = bytes.getLong(0xC9 + 8);
        return Optional.of(new FileSystemMark(
                Kind.BTRFS,
                Optional.of(printed(bytes, 0x20)),
                text(bytes, 0x12B, 256),
                own > 0 ? OptionalLong.of(own) : OptionalLong.empty(),
                false));
    }

    private static FileSystemMark other(ByteBuffer bytes, byte[] start) {
        String text = new String(start, StandardCharsets.ISO_8859_1);
        if (text.startsWith("LUKS\u00BA\u00BE") || text.startsWith("LABELONE", 512)) {
            return bare(Kind.CONTAINER);
        } else if (text.startsWith("XFSB")) {
            return bare(Kind.XFS);
        } else if (text.startsWith("hsqs")) {
            return new FileSystemMark(
                    Kind.SQUASHFS,
                    Optional.empty(),
                    Optional.empty(),
                    bytes.getLong(40) > 0 ? OptionalLong.of(bytes.getLong(40)) : OptionalLong.empty(),
                    false);
        } else if (bytes.getInt(SUPER) == 0xE0F5_E1E2) {
            return bare(Kind.EROFS);
        } else if (text.startsWith("SWAPSPACE2", 4086)) {
            return bare(Kind.SWAP);
        } else if (isFat(bytes, text)) {
            return fat(bytes, text);
        }
        return bare(text.chars().allMatch(each -> each == 0) ? Kind.ZEROS : Kind.OTHER);
    }

    private static boolean isFat(ByteBuffer bytes, String text) {
        return (bytes.getShort(510) & 0xFFFF) == 0xAA55
                && (text.startsWith("FAT32   ", 82)
                        || text.startsWith("FAT12   ", 54)
                        || text.startsWith("FAT16   ", 54));
    }

    private static FileSystemMark fat(ByteBuffer bytes, String text) {
        int at = text.startsWith("FAT32   ", 82) ? 67 : 39;
        int serial = bytes.getInt(at);
        String label = text.substring(at + 4, at + 15).strip();
        long sectors = bytes.getShort(19) & 0xFFFF;
        return new FileSystemMark(
                Kind.FAT,
                Optional.of(String.format("%04x-%04x", serial >>> 16, serial & 0xFFFF)),
                label.isEmpty() || label.equals("NO NAME") ? Optional.empty() : Optional.of(label),
                OptionalLong.of(
                        (sectors == 0 ? bytes.getInt(32) & 0xFFFF_FFFFL : sectors) * (bytes.getShort(11) & 0xFFFF)),
                false);
    }

    private static FileSystemMark bare(Kind kind) {
        return new FileSystemMark(kind, Optional.empty(), Optional.empty(), OptionalLong.empty(), false);
    }

    /** {@code blocks} of two to the {@code log} bytes; a count that cannot be is taken as one that no card holds. */
    private static OptionalLong product(long blocks, long log) {
        return OptionalLong.of(
                blocks < 0 || log > LARGEST_BLOCK || blocks > Long.MAX_VALUE >> log ? Long.MAX_VALUE : blocks << log);
    }

    private static String printed(ByteBuffer bytes, int at) {
        ByteBuffer big = bytes.duplicate().order(ByteOrder.BIG_ENDIAN);
        return new UUID(big.getLong(at), big.getLong(at + 8)).toString().toLowerCase(Locale.ROOT);
    }

    private static Optional<String> text(ByteBuffer bytes, int at, int length) {
        int end = at;
        while (end < at + length && bytes.get(end) != 0) {
            end++;
        }
        byte[] copy = new byte[end - at];
        bytes.get(at, copy);
        String text = new String(copy, StandardCharsets.UTF_8);
        return text.isEmpty() ? Optional.empty() : Optional.of(text);
    }
}
