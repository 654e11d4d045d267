package bootmend.bench;

import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * A volume laid out as FAT32, of any number of clusters, that takes no memory for its table: a small volume of the
 * fixtures at its start, and behind it files whose table entries are worked out when they are read.
 *
 * <p>Offsets in the boot sector and FSInfo: "FAT: General Overview of On-Disk Format", version 1.03.
 */
final class GrownFat implements BlockDevice {

    /** The most clusters that a FAT32 volume has: 28-bit numbers less two and the marks at their end. */
    static final int MOST_CLUSTERS = 0x0FFF_FFF4;

    private static final int SECTOR = 512;
    private static final int ENTRY = 4;
    private static final int END_MARK = 0x0FFF_FFFF;
    /** Clusters of the small volume at the start. */
    private static final int SMALL = 500;

    private static final int FIRST_GROWN = 2 + SMALL;
    /** Clusters of a file of just under 4 GiB. */
    private static final int MOST_OF_A_FILE = 8_388_607;

    private static final int COPIES = 2;

    /** How the volume behind the small one is taken. */
    enum Fill {
        EMPTY,
        /** Files whose clusters follow each other. */
        FULL,
        /** Files each of which takes every {@value #SCATTER}th cluster, so that each step leads to another sector. */
        SCATTERED
    }

    private static final int SCATTER = 130;

    private final SparseDisk small;
    private final byte[] reserved;
    private final byte[] table;
    private final Fill fill;
    private final long fatBytes;
    private final int end;
    private final long size;
    private final long smallData;
    private long reads;

    /** @param clusters data clusters, 1,000 to {@value #MOST_CLUSTERS}; each is a sector of 512 bytes */
    GrownFat(int clusters, Fill fill) throws IOException {
        this.fill = fill;
        this.end = clusters + 2;
        FatSpec spec = FatSpec.fat32(SMALL).anyClusterCount().build();
        FatBuilder builder = new FatBuilder(spec).file("start4.elf", new byte[3000]);
        int files =
                switch (fill) {
                    case EMPTY -> 0;
                    case FULL -> (end - FIRST_GROWN + MOST_OF_A_FILE - 1) / MOST_OF_A_FILE;
                    case SCATTERED -> SCATTER;
                };
        for (int i = 0; i < files; i++) {
            builder.add("", FatItem.raw(slot(i)));
        }
        builder.add("", FatItem.file("config.txt", ConfigText.demo()));
        this.small = spec.emptyDisk();
        builder.writeTo(small, 0);
        long fatSectors = ((long) end * ENTRY + SECTOR - 1) / SECTOR;
        this.fatBytes = fatSectors * SECTOR;
        this.smallData = spec.dataSector() * SECTOR;
        this.table = small.toBytes((long) spec.reservedSectors() * SECTOR, FIRST_GROWN * ENTRY);
        this.reserved = reserved(spec, fatSectors, clusters);
        this.size = dataStart() + (long) clusters * SECTOR;
    }

    private byte[] reserved(FatSpec spec, long fatSectors, int clusters) {
        byte[] bytes = small.toBytes(0, spec.reservedSectors() * SECTOR);
        ByteBuffer out = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        int freeInSmall = out.getInt(SECTOR + 488);
        for (int boot : new int[] {0, spec.backupBootSector() * SECTOR}) {
            out.putInt(boot + 32, (int) (spec.reservedSectors() + COPIES * fatSectors + clusters));
            out.putInt(boot + 36, (int) fatSectors);
            out.putInt(boot + SECTOR + 488, freeInSmall + (fill == Fill.EMPTY ? end - FIRST_GROWN : 0));
        }
        return bytes;
    }

    /** The entry of the {@code number}th grown file. */
    private byte[] slot(int number) {
        int first = fill == Fill.FULL ? FIRST_GROWN + number * MOST_OF_A_FILE : FIRST_GROWN + number;
        int clusters = fill == Fill.FULL ? Math.min(MOST_OF_A_FILE, end - first) : (end - 1 - first) / SCATTER + 1;
        ByteBuffer slot = ByteBuffer.allocate(32).order(ByteOrder.LITTLE_ENDIAN);
        slot.put(0, "LOG%05dCSV".formatted(number).getBytes(StandardCharsets.US_ASCII));
        slot.put(11, (byte) FatItem.ARCHIVE);
        slot.putShort(20, (short) (first >>> 16)).putShort(26, (short) first);
        slot.putInt(28, (int) ((long) clusters * SECTOR));
        return slot.array();
    }

    private int entry(int cluster) {
        return switch (fill) {
            case EMPTY -> 0;
            case FULL ->
                (cluster - FIRST_GROWN + 1) % MOST_OF_A_FILE == 0 || cluster + 1 == end ? END_MARK : cluster + 1;
            case SCATTERED -> cluster + SCATTER < end ? cluster + SCATTER : END_MARK;
        };
    }

    /** How often the device was read so far. */
    long reads() {
        return reads;
    }

    private long fatStart() {
        return reserved.length;
    }

    private long dataStart() {
        return fatStart() + COPIES * fatBytes;
    }

    @Override
    public void read(long offset, ByteBuffer target) throws IOException {
        reads++;
        if (offset < 0 || target.remaining() > size - offset) {
            throw new IOException("there is nothing at " + offset);
        }
        long at = offset;
        while (target.hasRemaining()) {
            int before = target.remaining();
            if (at < fatStart()) {
                target.put(reserved, (int) at, (int) Math.min(before, fatStart() - at));
            } else if (at < dataStart()) {
                readTable((at - fatStart()) % fatBytes, target);
            } else {
                readData(at - dataStart(), target);
            }
            at += before - target.remaining();
        }
    }

    /** From {@code at} within one copy, at most to its end. */
    private void readTable(long at, ByteBuffer target) {
        int length = (int) Math.min(target.remaining(), fatBytes - at);
        if (at + length <= table.length) {
            target.put(table, (int) at, length);
            return;
        }
        int skipped = (int) (at % ENTRY);
        byte[] bytes = new byte[(skipped + length + ENTRY - 1) / ENTRY * ENTRY];
        ByteBuffer out = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        int cluster = (int) (at / ENTRY);
        for (int i = 0; i < bytes.length; i += ENTRY, cluster++) {
            if (cluster < FIRST_GROWN) {
                out.put(i, table, cluster * ENTRY, ENTRY);
            } else if (cluster < end) {
                out.putInt(i, entry(cluster));
            }
        }
        target.put(bytes, skipped, length);
    }

    private void readData(long at, ByteBuffer target) {
        long inSmall = small.getSize() - smallData - at;
        byte[] bytes = inSmall > 0
                ? small.toBytes(smallData + at, (int) Math.min(inSmall, target.remaining()))
                : new byte[Math.min(target.remaining(), SECTOR)];
        target.put(bytes);
    }

    @Override
    public long getSize() {
        return size;
    }

    @Override
    public void write(long offset, ByteBuffer source) throws IOException {
        throw new IOException("this card is only looked at");
    }

    @Override
    public void flush() {
        // Nothing was written.
    }

    @Override
    public int getSectorSize() {
        return SECTOR;
    }

    @Override
    public void close() {
        // It stays open for the next look.
    }

    @Override
    public boolean isClosed() {
        return false;
    }

    @Override
    public boolean isReadOnly() {
        return true;
    }
}
