package bootmend.partition;

import bootmend.CardException;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds out which partition table a card has and reads it.
 *
 * <p>Sources: UEFI Specification 2.10, chapter 5 (protective MBR, GPT); "FAT: General Overview of On-Disk Format",
 * version 1.03, boot sector fields (for telling a volume without a table from an MBR).
 */
public final class PartitionTableReader {

    static final int MIN_SECTOR = 512;
    static final int MAX_SECTOR = 4096;
    private static final int PROTECTIVE_TYPE = 0xEE;

    private final BlockDevice card;
    private final long size;
    private final int sectorSize;

    private PartitionTableReader(BlockDevice card) throws IOException {
        this.card = card;
        this.size = card.getSize();
        this.sectorSize = card.getSectorSize();
    }

    /** Reads the table of {@code card}; throws when the card holds neither a table nor anything like a FAT volume. */
    public static PartitionTable read(BlockDevice card) throws CardException, IOException {
        return new PartitionTableReader(card).read();
    }

    private PartitionTable read() throws CardException, IOException {
        if (size < MIN_SECTOR) {
            throw CardException.unreadable(
                    "it has only " + size + " bytes, less than one sector",
                    "This is no card image; read the card into an image again.");
        }
        ByteBuffer first = sector(0, MIN_SECTOR);
        if (VolumeStart.looksLikeFat(first)) {
            return PartitionTable.none(size, sectorSize, List.of());
        }
        if (!VolumeStart.hasSignature(first)) {
            return withoutSignature();
        }
        List<MbrSlot> slots = MbrSlot.readAll(first);
        if (slots.stream().anyMatch(slot -> slot.type() == PROTECTIVE_TYPE)) {
            Optional<PartitionTable> gpt = gpt(List.of());
            if (gpt.isPresent()) {
                return gpt.get();
            }
        }
        return mbr(slots);
    }

    /** The first sector is damaged: a backup further on may still say what this is. */
    private PartitionTable withoutSignature() throws CardException, IOException {
        String lost = "the first sector of the card has no valid signature";
        Optional<PartitionTable> gpt = gpt(List.of(lost + "; the partition table was read from the GPT behind it"));
        if (gpt.isPresent()) {
            return gpt.get();
        }
        for (int unit = MIN_SECTOR; unit <= MAX_SECTOR; unit *= 2) {
            long backup = (long) VolumeStart.BACKUP_SECTOR * unit;
            if (backup + MIN_SECTOR <= size && VolumeStart.looksLikeFat(sector(backup, MIN_SECTOR))) {
                return PartitionTable.none(
                        size,
                        sectorSize,
                        List.of(lost + ", but a backup boot sector stands at byte " + backup
                                + ", so this is taken for a volume without a partition table"));
            }
        }
        throw CardException.unreadable(
                "it has no partition table and no FAT volume at its start",
                "Check that this is a card image or the whole card (not another file, not an archive).");
    }

    private Optional<PartitionTable> gpt(List<String> doubts) throws IOException {
        List<Integer> units = sectorSize == MIN_SECTOR ? List.of(MIN_SECTOR, MAX_SECTOR) : List.of(sectorSize);
        for (int unit : units) {
            Optional<PartitionTable> table = new GptReader(card, unit).read(doubts);
            if (table.isPresent()) {
                return table;
            }
        }
        return Optional.empty();
    }

    private PartitionTable mbr(List<MbrSlot> slots) throws IOException {
        List<Partition> partitions = new ArrayList<>();
        List<String> doubts = new ArrayList<>();
        for (MbrSlot slot : slots) {
            if (slot.isEmpty() || slot.isExtended()) {
                continue;
            }
            Partition partition = slot.toPartition(unitOf(slot));
            if (slot.type() == PROTECTIVE_TYPE) {
                doubts.add("the MBR announces a GPT, but neither GPT header is readable");
                continue;
            }
            if (partition.start() >= size) {
                doubts.add("partition " + partition.number() + " starts past the end of the card");
                continue;
            }
            if (partition.length() > size - partition.start()) {
                doubts.add("partition " + partition.number() + " reaches past the end of the card; it may be cut off");
            }
            partitions.add(partition);
        }
        return new PartitionTable(PartitionTable.Kind.MBR, partitions, doubts);
    }

    /**
     * Bytes that an MBR slot counts in: the device's sector size, or 4096 for an image of a card with such sectors,
     * which only shows in where the volume's boot sector stands.
     */
    private int unitOf(MbrSlot slot) throws IOException {
        if (sectorSize == MIN_SECTOR && slot.isFat()) {
            for (int unit : List.of(MIN_SECTOR, MAX_SECTOR)) {
                long start = slot.firstSector() * unit;
                if (start <= size - MIN_SECTOR && VolumeStart.looksLikeFat(sector(start, MIN_SECTOR))) {
                    return unit;
                }
            }
        }
        return sectorSize;
    }

    private ByteBuffer sector(long offset, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
        card.read(offset, buffer);
        return buffer.flip();
    }
}
