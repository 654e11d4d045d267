package bootmend.partition;

import bootmend.device.OutsideDeviceException;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.zip.CRC32;

/**
 * Reads a GUID partition table, from its backup where the first copy is damaged.
 *
 * <p>Source: UEFI Specification 2.10, section 5.3 (header fields, both CRC32s, the alternate header in the last block).
 */
final class GptReader {

    private static final long SIGNATURE = 0x5452415020494645L;
    private static final int MIN_HEADER = 92;
    private static final int MIN_ENTRY = 128;
    /** The standard reserves 16 KiB for entries; a megabyte is room for 8192 of them. */
    private static final long MAX_ENTRY_BYTES = 1 << 20;

    private static final UUID UNUSED = new UUID(0, 0);
    private static final UUID EFI_SYSTEM = UUID.fromString("c12a7328-f81f-11d2-ba4b-00a0c93ec93b");
    private static final UUID BASIC_DATA = UUID.fromString("ebd0a0a2-b9e5-4433-87c0-68b6b72699c7");

    private final BlockDevice card;
    private final int unit;
    private final long blocks;

    GptReader(BlockDevice card, int unit) throws IOException {
        this.card = card;
        this.unit = unit;
        this.blocks = card.getSize() / unit;
    }

    /** The table, or nothing where neither copy is valid; {@code warnings} are those found before. */
    Optional<PartitionTable> read(List<String> warnings) throws IOException {
        Optional<Header> used = header(1);
        Optional<Header> primary = used;
        Optional<List<Partition>> partitions = primary.isPresent() ? entries(primary.get()) : Optional.empty();
        List<String> all = new ArrayList<>(warnings);
        if (partitions.isEmpty()) {
            Optional<Header> backup = blocks > 2 ? backup() : Optional.empty();
            used = backup;
            partitions = backup.isPresent() ? entries(backup.get()) : Optional.empty();
            all.add("the first GPT header or its entries are damaged; the backup at the card's end was read instead");
        }
        Optional<UUID> disk = used.map(Header::disk);
        return partitions.map(found ->
                new PartitionTable(PartitionTable.Kind.GPT, found, List.of(), OptionalLong.empty(), disk, false, all));
    }

    /** Whether the copy at the card's end is valid, header and entries; not asked by {@link #read} where the first is. */
    boolean hasBackup() throws IOException {
        Optional<Header> backup = blocks > 2 ? backup() : Optional.empty();
        return backup.isPresent() && entries(backup.get()).isPresent();
    }

    /** At the card's end, which a packed image may not know. */
    private Optional<Header> backup() throws IOException {
        try {
            return header(blocks - 1);
        } catch (OutsideDeviceException e) {
            return Optional.empty();
        }
    }

    /** The fields of a valid header that are needed here. */
    private record Header(long entriesBlock, int entryCount, int entrySize, int entriesCrc, UUID disk) {}

    private Optional<Header> header(long block) throws IOException {
        if (block >= blocks) {
            return Optional.empty();
        }
        ByteBuffer sector = read(block * unit, unit);
        int headerSize = sector.getInt(12);
        if (sector.getLong(0) != SIGNATURE
                || headerSize < MIN_HEADER
                || headerSize > unit
                || sector.getLong(24) != block) {
            return Optional.empty();
        }
        byte[] bytes = new byte[headerSize];
        sector.get(0, bytes);
        for (int i = 16; i < 20; i++) {
            bytes[i] = 0;
        }
        if (crc(ByteBuffer.wrap(bytes)) != sector.getInt(16)) {
            return Optional.empty();
        }
        Header header = new Header(
                sector.getLong(72), sector.getInt(80), sector.getInt(84), sector.getInt(88), guid(sector, 56));
        return isPlausible(header) ? Optional.of(header) : Optional.empty();
    }

    private boolean isPlausible(Header header) {
        long bytes = (long) header.entryCount * header.entrySize;
        return header.entryCount > 0
                && header.entrySize >= MIN_ENTRY
                && header.entrySize % 8 == 0
                && bytes <= MAX_ENTRY_BYTES
                && header.entriesBlock > 0
                && header.entriesBlock < blocks
                && bytes <= (blocks - header.entriesBlock) * unit;
    }

    private Optional<List<Partition>> entries(Header header) throws IOException {
        ByteBuffer table = read(header.entriesBlock * unit, header.entryCount * header.entrySize);
        if (crc(table.duplicate()) != header.entriesCrc) {
            return Optional.empty();
        }
        List<Partition> found = new ArrayList<>();
        for (int i = 0; i < header.entryCount; i++) {
            int at = i * header.entrySize;
            UUID type = guid(table, at);
            long first = table.getLong(at + 32);
            long last = table.getLong(at + 40);
            if (!type.equals(UNUSED) && first > 0 && last >= first && first < blocks) {
                boolean fat = type.equals(EFI_SYSTEM) || type.equals(BASIC_DATA);
                long sectors = Math.min(last, blocks - 1) - first + 1;
                found.add(new Partition(
                        i + 1,
                        first,
                        sectors,
                        unit,
                        type.toString(),
                        fat,
                        Optional.of(guid(table, at + 16)),
                        name(table, at + 56),
                        Partition.Origin.TABLE,
                        last < blocks));
            }
        }
        return Optional.of(found);
    }

    /** A GUID's first three fields are little-endian, its last two big-endian (the source's appendix A). */
    private static UUID guid(ByteBuffer table, int at) {
        long high = (table.getInt(at) & 0xFFFFFFFFL) << 32
                | (table.getShort(at + 4) & 0xFFFFL) << 16
                | table.getShort(at + 6) & 0xFFFFL;
        return new UUID(high, Long.reverseBytes(table.getLong(at + 8)));
    }

    /** 36 characters of two bytes, or up to the first that is 0. */
    private static String name(ByteBuffer table, int at) {
        StringBuilder name = new StringBuilder();
        for (int i = 0; i < 36 && table.getChar(at + 2 * i) != 0; i++) {
            name.append(table.getChar(at + 2 * i));
        }
        return name.toString();
    }

    private ByteBuffer read(long offset, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
        card.read(offset, buffer);
        return buffer.flip();
    }

    private static int crc(ByteBuffer bytes) {
        CRC32 crc = new CRC32();
        crc.update(bytes);
        return (int) crc.getValue();
    }
}
