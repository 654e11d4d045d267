package bootmend.change;

import bootmend.CardException;
import bootmend.device.PartitionWindow;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FileContent;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SparseDisk;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** A card with an MBR and one FAT volume, with what the tests of changes ask of it. */
record PlannedCard(SparseDisk disk, FatSpec spec, FatLayout layout) {

    static final long START = 2048 * 512;
    static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T08:30:00Z"), ZoneOffset.UTC);
    static final byte[] OLD = text("arm_freq=2350\nover_voltage=8\n".repeat(40));
    static final byte[] NEW = text("#arm_freq=2350\n#over_voltage=8\n".repeat(40));

    static PlannedCard of(FatSpec spec, UnaryOperator<FatBuilder> content) throws IOException {
        long size = START + spec.bytes() + 8 * 4096;
        SparseDisk disk = new MbrBuilder(size - size % 4096, 512)
                .partition(0x0C, 2048, spec.bytes() / 512)
                .build();
        FatBuilder builder = new FatBuilder(spec)
                .stride(2)
                .file("start4.elf", noise(5000))
                .file("config.txt", OLD)
                .directory("overlays")
                .file("overlays/robot-arm-board.dtbo", noise(900))
                .file("extra.txt", OLD);
        return new PlannedCard(disk, spec, content.apply(builder).writeTo(disk, START));
    }

    static Stream<FatSpec> specs() {
        return Stream.of(
                        FatSpec.fat12(3000),
                        FatSpec.fat16(5000).sectorsPerCluster(2),
                        FatSpec.fat32(66000),
                        FatSpec.fat16(5000).bytesPerSector(4096).fatCount(1),
                        FatSpec.fat32(66000).fatCount(3).activeFat(1),
                        FatSpec.fat32(66000).upperBits(5).sectorsPerCluster(8))
                .map(FatSpec.Builder::build);
    }

    FatVolume open(BlockDevice device) throws IOException {
        return FatVolume.open(new PartitionWindow(device, START, spec.bytes()));
    }

    /** The card on a medium that the system tells nothing of. */
    Target target(BlockDevice device) throws IOException {
        return target(device, Medium.at("card"));
    }

    Target target(BlockDevice device, Medium medium) throws IOException {
        return Target.ofCard(device, new PartitionWindow(device, START, spec.bytes()), id(), medium, () -> true);
    }

    CardId id() throws IOException {
        return CardId.of(open(disk), START);
    }

    ChangePlanner planner(boolean inPlace) throws IOException {
        return new ChangePlanner(open(disk), id(), LocalDateTime.now(CLOCK), inPlace);
    }

    Plan plan(byte[] before, byte[] after) throws CardException, IOException {
        return plan(before, after, false);
    }

    Plan plan(byte[] before, byte[] after, boolean inPlace) throws CardException, IOException {
        ChangePlanner planner = planner(inPlace);
        planner.replace("config.txt", open(disk).find("config.txt").orElseThrow(), before, after);
        return planner.plan("test");
    }

    FileContent read(BlockDevice device, String path) throws IOException {
        FatVolume volume = open(device);
        return volume.read(volume.find(path).orElseThrow(), 1 << 24);
    }

    /** Every file on the card but the config file, with its place in its folder. */
    Map<DirectoryEntry, String> otherFiles(BlockDevice device) throws IOException {
        FatVolume volume = open(device);
        Map<DirectoryEntry, String> files = new LinkedHashMap<>();
        for (DirectoryEntry entry : volume.root().entries()) {
            if (!entry.folder() && !entry.isNamed("config.txt")) {
                files.put(entry, hash(volume.read(entry, 1 << 24)));
            } else if (entry.folder()) {
                for (DirectoryEntry inside : volume.list(entry).entries()) {
                    files.put(inside, hash(volume.read(inside, 1 << 24)));
                }
            }
        }
        return files;
    }

    private static String hash(FileContent content) {
        return RecordFormat.sha256(content.bytes()) + content.warnings();
    }

    static byte[] text(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    static byte[] noise(int length) {
        byte[] bytes = new byte[length];
        new SplittableRandom(length).nextBytes(bytes);
        return bytes;
    }
}
