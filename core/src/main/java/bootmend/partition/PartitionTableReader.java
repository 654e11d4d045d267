package bootmend.partition;

import bootmend.CardException;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

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

    /**
     * The volume that a user says begins at byte {@code offset}, as a card with that partition alone.
     *
     * @throws CardException of kind usage where no FAT boot sector, nor its copy, says so
     */
    public static PartitionTable volumeAt(BlockDevice card, long offset) throws CardException, IOException {
        PartitionTableReader reader = new PartitionTableReader(card);
        Optional<Partition> volume = offset < 0 || offset >= reader.size || offset % MIN_SECTOR != 0
                ? Optional.empty()
                : new LostVolumes(reader::sector, reader.size).at(offset, 0, Partition.Origin.NAMED);
        return new PartitionTable(
                PartitionTable.Kind.NONE,
                List.of(volume.orElseThrow(() -> CardException.usage(
                        "no FAT volume begins at byte " + offset,
                        "Give the place in bytes from the card's start, a multiple of " + MIN_SECTOR + "."))),
                List.of());
    }

    /** Sentences on copies of the table that {@link #read} had no need of; reads the card's end. */
    public static List<String> lookAtBackup(BlockDevice card, PartitionTable table) throws IOException {
        if (table.kind() != PartitionTable.Kind.GPT || table.partitions().isEmpty()) {
            return List.of();
        }
        return new GptReader(card, table.partitions().get(0).sectorSize()).hasBackup()
                ? List.of()
                : List.of("the backup of the GPT at the card's end is damaged or missing");
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
                return beside(gpt.get(), slots, signature(first));
            }
        }
        return mbr(slots, signature(first));
    }

    /** The 32 bits from byte 440 on. Source: UEFI Specification 2.10, table "Legacy MBR", "UniqueMBRDiskSignature". */
    private static OptionalLong signature(ByteBuffer sector) {
        return OptionalLong.of(sector.getInt(440) & 0xFFFFFFFFL);
    }

    /** The GPT counts; partitions that the MBR beside it names are only compared with it. */
    private static PartitionTable beside(PartitionTable gpt, List<MbrSlot> slots, OptionalLong signature) {
        List<MbrSlot> named = slots.stream()
                .filter(slot -> slot.type() != PROTECTIVE_TYPE && !slot.isEmpty())
                .toList();
        List<String> warnings = new ArrayList<>(gpt.warnings());
        for (MbrSlot slot : named) {
            if (gpt.partitions().stream().noneMatch(each -> each.firstSector() == slot.firstSector())) {
                warnings.add("the MBR beside the GPT names a partition at sector " + slot.firstSector()
                        + " that the GPT does not know; boards that read the MBR see another card");
            }
        }
        return new PartitionTable(
                gpt.kind(), gpt.partitions(), gpt.beyond(), signature, gpt.diskGuid(), !named.isEmpty(), warnings);
    }

    /** What no table leads to, come upon by looking. */
    private Optional<PartitionTable> searched(List<String> warnings) throws IOException {
        List<Partition> found = new LostVolumes(this::sector, size).search();
        if (found.isEmpty()) {
            return Optional.empty();
        }
        List<String> all = new ArrayList<>(warnings);
        for (Partition volume : found) {
            all.add("no partition table leads to the FAT volume at byte " + volume.start()
                    + "; it was found by search, and is read but not written unless that place is named");
        }
        return Optional.of(new PartitionTable(PartitionTable.Kind.NONE, found, all));
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
        Optional<PartitionTable> searched = searched(List.of(lost));
        if (searched.isPresent()) {
            return searched.get();
        }
        throw CardException.unreadable(
                "it has no partition table and no FAT volume at its start",
                "Check that this is a card image or the whole card (not another file, not an archive).");
    }

    private Optional<PartitionTable> gpt(List<String> warnings) throws IOException {
        List<Integer> units = sectorSize == MIN_SECTOR ? List.of(MIN_SECTOR, MAX_SECTOR) : List.of(sectorSize);
        for (int unit : units) {
            Optional<PartitionTable> table = new GptReader(card, unit).read(warnings);
            if (table.isPresent()) {
                return table;
            }
        }
        return Optional.empty();
    }

    private PartitionTable mbr(List<MbrSlot> slots, OptionalLong signature) throws IOException {
        List<Partition> partitions = new ArrayList<>();
        List<Partition> beyond = new ArrayList<>();
        List<String> warnings = new ArrayList<>();
        List<MbrSlot> all = new ArrayList<>(slots);
        for (MbrSlot slot : slots) {
            if (slot.isExtended() && !slot.isEmpty()) {
                all.addAll(new ExtendedChain(this::sector, size, sectorSize, warnings)
                        .walk(slot, MbrSlot.SLOTS + 1 + all.size() - slots.size()));
            }
        }
        for (MbrSlot slot : all) {
            if (slot.isEmpty() || slot.isExtended()) {
                continue;
            }
            Partition partition = slot.toPartition(unitOf(slot));
            if (slot.type() == PROTECTIVE_TYPE) {
                warnings.add("the MBR announces a GPT, but neither GPT header is readable");
                continue;
            }
            if (partition.start() >= size) {
                warnings.add("partition " + partition.number() + " starts past the end of the card");
                beyond.add(partition.cutOff());
                continue;
            }
            if (partition.length() > size - partition.start()) {
                warnings.add(
                        "partition " + partition.number() + " reaches past the end of the card; it may be cut off");
                partition = partition.cutOff();
            }
            partitions.add(partition);
        }
        if (partitions.isEmpty() && beyond.isEmpty()) {
            Optional<PartitionTable> searched = searched(warnings);
            if (searched.isPresent()) {
                return searched.get();
            }
        }
        return new PartitionTable(
                PartitionTable.Kind.MBR, partitions, beyond, signature, Optional.empty(), false, warnings);
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

    private ByteBuffer sector(long offset) throws IOException {
        return sector(offset, MIN_SECTOR);
    }

    private ByteBuffer sector(long offset, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
        card.read(offset, buffer);
        return buffer.flip();
    }
}
