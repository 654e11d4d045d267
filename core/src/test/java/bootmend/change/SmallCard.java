package bootmend.change;

import bootmend.CardException;
import bootmend.device.PartitionWindow;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;

/**
 * A card of a few clusters in an array, without a partition table, that takes a number of writes and no more.
 *
 * <p>One of its FAT copies is damaged in one place, and two clusters are lost, so that there is something to repair.
 */
final class SmallCard implements BlockDevice {

    static final String OLD = "arm_freq=2000\nover_voltage=6\n";
    static final String NEW = "#arm_freq=2000\n#over_voltage=6\n";

    private static final int CLUSTERS = 24;
    private static final int LOST = 20;

    private final byte[] bytes;
    private int writesLeft = Integer.MAX_VALUE;

    SmallCard(byte[] bytes) {
        this.bytes = bytes.clone();
    }

    static SmallCard of(int serial, String config) throws IOException {
        FatSpec spec = FatSpec.fat12(CLUSTERS).serial(serial).build();
        SparseDisk disk = spec.emptyDisk();
        FatLayout layout = new FatBuilder(spec)
                .file("start.elf", new byte[900])
                .file("config.txt", config.getBytes(StandardCharsets.US_ASCII))
                .writeTo(disk, 0);
        layout.setFatEntries(disk, LOST, LOST + 1);
        layout.setFatEntries(disk, LOST + 1, 0xFFF);
        int firmware = layout.chain("start.elf")[0];
        long place = layout.fatEntryOffset(1, firmware);
        disk.patch(place, (byte) (disk.toBytes(place, 1)[0] ^ 0x0F));
        return new SmallCard(disk.toBytes(0, Math.toIntExact(disk.getSize())));
    }

    byte[] bytes() {
        return bytes.clone();
    }

    /** The write after {@code writes} more fails, and each after that. */
    void failAfter(int writes) {
        writesLeft = writes;
    }

    FatVolume volume() throws IOException {
        return FatVolume.open(this);
    }

    CardId id() throws IOException {
        return CardId.of(volume(), 0);
    }

    Target target(Medium medium) throws IOException {
        return Target.ofCard(this, new PartitionWindow(this, 0, getSize()), id(), medium, () -> true);
    }

    String config() throws IOException {
        FatVolume volume = volume();
        DirectoryEntry entry = volume.find("config.txt").orElseThrow();
        return new String(volume.read(entry, 4096).bytes(), StandardCharsets.US_ASCII);
    }

    /** Comments the two lines out; empty where they are already. */
    Plan reset(LocalDateTime now) throws CardException, IOException {
        return config(config().replaceAll("(?m)^(?=[ao])", "#"), now);
    }

    Plan config(String content, LocalDateTime now) throws CardException, IOException {
        FatVolume volume = volume();
        ChangePlanner planner = new ChangePlanner(volume, id(), now, false);
        planner.replace(
                "config.txt",
                volume.find("config.txt").orElseThrow(),
                config().getBytes(StandardCharsets.US_ASCII),
                content.getBytes(StandardCharsets.US_ASCII));
        return planner.plan("back to stock");
    }

    Plan repair(LocalDateTime now) throws CardException, IOException {
        return new RepairPlanner(new PartitionWindow(this, 0, getSize()), 0, now, false)
                .plan(true)
                .plan();
    }

    @Override
    public long getSize() {
        return bytes.length;
    }

    @Override
    public void read(long offset, ByteBuffer dest) {
        dest.put(bytes, Math.toIntExact(offset), dest.remaining());
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        if (writesLeft-- <= 0) {
            throw new IOException("the reader was unplugged");
        }
        src.get(bytes, Math.toIntExact(offset), src.remaining());
    }

    @Override
    public void flush() {
        // Every write is durable at once.
    }

    @Override
    public int getSectorSize() {
        return 512;
    }

    @Override
    public void close() {
        // Stays open.
    }

    @Override
    public boolean isClosed() {
        return false;
    }

    @Override
    public boolean isReadOnly() {
        return false;
    }
}
