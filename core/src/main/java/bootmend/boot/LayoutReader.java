package bootmend.boot;

import bootmend.device.OutsideDeviceException;
import bootmend.partition.Partition;
import bootmend.partition.PartitionTable;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * Reads what names partitions and disks, and the partitions that lie past the card's end, which the table of what can be
 * opened leaves out.
 *
 * <p>Sources: UEFI Specification 2.10, chapter 5; the disk id at byte 440 and how {@code PARTUUID=} writes it: the image
 * build of the maker's system, export-image set-partuuid, commit 314262cb, and the kernel, block/early-lookup.c, commit
 * 017fb83e.
 */
final class LayoutReader {

    private static final int SECTOR = 512;
    private static final int DISK_ID = 440;
    private static final int TABLE = 446;
    private static final int SLOT = 16;
    private static final int SLOTS = 4;
    private static final int GPT_ENTRY = 128;
    /** No source: a bound against hostile cards. */
    private static final int MOST_ENTRIES = 1024;

    private final BlockDevice device;
    private final PartitionTable table;
    private final long size;
    private final int unit;
    private final boolean knownSize;

    private LayoutReader(BlockDevice device, PartitionTable table, boolean knownSize) throws IOException {
        this.device = device;
        this.table = table;
        this.knownSize = knownSize;
        this.size = device.getSize();
        this.unit = table.partitions().stream()
                .mapToInt(Partition::sectorSize)
                .findFirst()
                .orElse(device.getSectorSize());
    }

    static CardLayout read(BlockDevice device, PartitionTable table, boolean knownSize) throws IOException {
        LayoutReader reader = new LayoutReader(device, table, knownSize);
        return switch (table.kind()) {
            case MBR -> reader.mbr();
            case GPT -> reader.gpt();
            case NONE ->
                reader.layout(
                        table.isSearched() ? CardLayout.Kind.LOST : CardLayout.Kind.NONE,
                        Optional.empty(),
                        List.of(),
                        false);
        };
    }

    private CardLayout layout(
            CardLayout.Kind kind, Optional<String> diskId, List<CardPartition> own, boolean extended) {
        List<CardPartition> all = new ArrayList<>(own);
        boolean more = extended;
        for (Partition partition : table.partitions()) {
            if (all.stream().noneMatch(each -> each.number() == partition.number())) {
                all.add(new CardPartition(
                        partition.number(),
                        partition.type(),
                        partition.start(),
                        partition.length(),
                        kind == CardLayout.Kind.MBR
                                ? diskId.map(id -> mbrId(id, partition.number()))
                                : Optional.empty(),
                        Optional.empty()));
                more &= partition.number() <= SLOTS;
            }
        }
        all.sort(Comparator.comparingInt(CardPartition::number));
        OptionalLong bytes = knownSize ? OptionalLong.of(size) : OptionalLong.empty();
        return new CardLayout(kind, diskId, all, more, bytes, table.warnings());
    }

    private CardLayout mbr() throws IOException {
        ByteBuffer sector = bytes(0, SECTOR);
        String id = String.format("%08x", sector.getInt(DISK_ID));
        List<CardPartition> own = new ArrayList<>();
        boolean extended = false;
        for (int i = 0; i < SLOTS; i++) {
            int at = TABLE + i * SLOT;
            int type = sector.get(at + 4) & 0xFF;
            long first = sector.getInt(at + 8) & 0xFFFF_FFFFL;
            long sectors = sector.getInt(at + 12) & 0xFFFF_FFFFL;
            boolean holdsOthers = type == 0x05 || type == 0x0F || type == 0x85;
            extended |= holdsOthers;
            if (type != 0 && first != 0 && sectors != 0 && type != 0xEE && !holdsOthers) {
                own.add(new CardPartition(
                        i + 1,
                        String.format("0x%02X", type),
                        first * unit,
                        sectors * unit,
                        Optional.of(mbrId(id, i + 1)),
                        Optional.empty()));
            }
        }
        return layout(CardLayout.Kind.MBR, Optional.of(id), own, extended);
    }

    /** The partition number behind the disk id is hexadecimal. */
    private static String mbrId(String diskId, int number) {
        return diskId + String.format("-%02x", number);
    }

    /** The reader of the table has found a valid header; where the first is damaged, that is the one at the end. */
    private CardLayout gpt() throws IOException {
        ByteBuffer header = header(unit);
        if (header == null) {
            header = header(size / unit * unit - unit);
        }
        if (header == null) {
            return layout(CardLayout.Kind.GPT, Optional.empty(), List.of(), false);
        }
        String id = guid(header, 56).toString();
        long array = header.getLong(72) * unit;
        int count = Math.min(MOST_ENTRIES, header.getInt(80));
        int entrySize = header.getInt(84);
        List<CardPartition> own = new ArrayList<>();
        for (int i = 0; i < count && entrySize >= GPT_ENTRY && entrySize <= SECTOR * 8; i++) {
            long at = array + (long) i * entrySize;
            if (array < 0 || at > size - GPT_ENTRY) {
                break;
            }
            ByteBuffer entry = bytes(at, GPT_ENTRY);
            UUID type = guid(entry, 0);
            long first = entry.getLong(32);
            long last = entry.getLong(40);
            boolean used = type.getMostSignificantBits() != 0 || type.getLeastSignificantBits() != 0;
            if (used && first > 0 && last >= first && last < Long.MAX_VALUE / unit) {
                String name = text(entry, 56, 72, StandardCharsets.UTF_16LE);
                int zero = name.indexOf('\0');
                own.add(new CardPartition(
                        i + 1,
                        type.toString(),
                        first * unit,
                        (last - first + 1) * unit,
                        Optional.of(guid(entry, 16).toString()),
                        Optional.of(zero < 0 ? name : name.substring(0, zero))));
            }
        }
        return layout(CardLayout.Kind.GPT, Optional.of(id), own, false);
    }

    private ByteBuffer header(long at) throws IOException {
        if (at < 0 || at > size - 92) {
            return null;
        }
        ByteBuffer header;
        try {
            header = bytes(at, 92);
        } catch (OutsideDeviceException e) {
            return null;
        }
        boolean signed = text(header, 0, 8, StandardCharsets.ISO_8859_1).equals("EFI PART");
        return signed ? header : null;
    }

    private static String text(ByteBuffer bytes, int at, int length, Charset charset) {
        byte[] copy = new byte[length];
        bytes.get(at, copy);
        return new String(copy, charset);
    }

    /** A GUID's first three fields are little-endian, its last two big-endian (the source's appendix A). */
    private static UUID guid(ByteBuffer bytes, int at) {
        long high = (bytes.getInt(at) & 0xFFFF_FFFFL) << 32
                | (bytes.getShort(at + 4) & 0xFFFFL) << 16
                | bytes.getShort(at + 6) & 0xFFFFL;
        return new UUID(high, Long.reverseBytes(bytes.getLong(at + 8)));
    }

    private ByteBuffer bytes(long offset, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
        device.read(offset, buffer);
        return buffer.flip();
    }
}
