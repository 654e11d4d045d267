package bootmend.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.change.CardId;
import bootmend.change.ChangePlanner;
import bootmend.change.Plan;
import bootmend.change.PlanBytes;
import bootmend.fat.FatVolume;
import bootmend.fixtures.SparseDisk;
import de.waldheinz.fs.FsFile;
import de.waldheinz.fs.fat.FatFileSystem;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** New files and folders on volumes that mkfs.fat made, as mtools and fsck.fat see them. */
class NewFilesTest {

    private static final LocalDateTime WRITTEN = LocalDateTime.of(2026, 2, 3, 10, 11, 12);
    private static final List<String> NAMES = List.of(
            "config.txt",
            "KERNEL8.IMG",
            "Mixed.Txt",
            "lower.TXT",
            "UPPER.txt",
            "noending",
            "NOENDING2",
            ".hidden",
            "two.dots.in.it",
            "a b c.txt",
            "eight888.thr",
            "nine99999.thr",
            "four.four",
            "bcm2711-rpi-4-b.dtb",
            "bcm2711-rpi-400.dtb",
            "bcm2711-rpi-cm4.dtb",
            "plus+comma,semi;equals=[brackets].txt",
            "exactly-13-ch",
            "exactly-26-characters-name",
            "x".repeat(150) + ".long");

    @TempDir
    private Path folder;

    @BeforeEach
    void needTools() {
        Tool.need("mkfs.fat", "fsck.fat", "mcopy", "mdir");
    }

    @ParameterizedTest(name = "FAT{0}, {1} sectors of {2} a cluster")
    @CsvSource({"12, 1, 512, 1440", "16, 1, 512, 8192", "16, 4, 512, 32768", "32, 1, 512, 40000", "16, 1, 2048, 40960"})
    void whatIsAddedIsThereForOthersAndNothingElse(int bits, int perCluster, int sector, int kibibytes)
            throws Exception {
        Path image = folder.resolve("made.img");
        Images.create(image, kibibytes * 1024L);
        Tool.run("mkfs.fat", "-F", "" + bits, "-s", "" + perCluster, "-S", "" + sector, "-n", "LAB", image.toString());
        Path there = Files.write(folder.resolve("A long name that was there.bin"), bytes(1, 3000));
        Tool.run("mcopy", "-i", image.toString(), there.toString(), "::");
        Map<String, byte[]> files = new LinkedHashMap<>();
        int seed = 10;
        for (String name : NAMES) {
            files.put("overlays/new/" + name, bytes(seed++, seed % 5 == 0 ? 0 : 60 * seed));
        }
        for (String name : NAMES.subList(0, 12)) {
            files.put(name, bytes(seed++, 30));
        }
        SparseDisk disk = Images.load(image);
        FatVolume volume = FatVolume.open(disk);
        ChangePlanner planner = new ChangePlanner(volume, CardId.of(volume, 0), WRITTEN, false);
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            planner.create(file.getKey(), file.getValue());
        }
        Plan plan = planner.plan("add");
        PlanBytes.after(plan).forEach(disk::patch);
        Path after = folder.resolve("after.img");
        disk.writeTo(after);

        assertThat(Fsck.complaints(disk, folder)).isEmpty();
        files.put("A long name that was there.bin", bytes(1, 3000));
        assertThat(copiedOut(after)).usingRecursiveComparison().isEqualTo(new TreeMap<>(files));
        String listing = Tool.text("mdir", "-a", "-i", after.toString(), "::overlays/new");
        assertThat(listing)
                .contains("2026-02-03  10:11")
                .contains("BCM271~1 DTB")
                .contains("BCM271~2 DTB");
        assertThat(FatVolume.open(disk).find("OVERLAYS/New/" + NAMES.get(13))).isPresent();
    }

    @Test
    void asManyAsAFolderTakesAcrossItsClusters() throws Exception {
        Path image = folder.resolve("made.img");
        Images.create(image, 8192 * 1024L);
        Tool.run("mkfs.fat", "-F", "16", "-s", "1", "-n", "LAB", image.toString());
        SparseDisk disk = Images.load(image);
        FatVolume volume = FatVolume.open(disk);
        ChangePlanner planner = new ChangePlanner(volume, CardId.of(volume, 0), WRITTEN, false);
        Map<String, byte[]> files = new TreeMap<>();
        Random random = new Random(5);
        for (int i = 0; i < 120; i++) {
            String name = "lab/" + "n".repeat(1 + random.nextInt(40)) + "-" + i + (i % 3 == 0 ? ".dtbo" : ".TXT");
            files.put(name, bytes(i, random.nextInt(900)));
            planner.create(name, files.get(name));
        }
        PlanBytes.after(planner.plan("add")).forEach(disk::patch);
        Path after = folder.resolve("after.img");
        disk.writeTo(after);
        assertThat(Fsck.complaints(disk, folder)).isEmpty();
        assertThat(copiedOut(after)).usingRecursiveComparison().isEqualTo(files);
    }

    /** Letters that not every computer's file names can have are read back by the library that shares no code with ours. */
    @Test
    void lettersBeyondAscii() throws Exception {
        Path image = folder.resolve("made.img");
        Images.create(image, 8192 * 1024L);
        Tool.run("mkfs.fat", "-F", "16", "-s", "1", "-n", "LAB", image.toString());
        SparseDisk disk = Images.load(image);
        FatVolume volume = FatVolume.open(disk);
        ChangePlanner planner = new ChangePlanner(volume, CardId.of(volume, 0), WRITTEN, false);
        List<String> names = List.of("gr\u00fc\u00dfe.txt", "\u65e5\u672c.dat", "\ud83d\ude00.txt");
        for (String name : names) {
            planner.create(name, bytes(name.length(), 700));
        }
        PlanBytes.after(planner.plan("add")).forEach(disk::patch);
        for (String name : names) {
            FsFile file =
                    FatFileSystem.read(disk, true).getRoot().getEntry(name).getFile();
            ByteBuffer content = ByteBuffer.allocate(700);
            file.read(0, content);
            assertThat(content.array()).isEqualTo(bytes(name.length(), 700));
        }
        assertThat(Fsck.complaints(disk, folder)).isEmpty();
    }

    private static byte[] bytes(long seed, int length) {
        byte[] bytes = new byte[length];
        new Random(seed).nextBytes(bytes);
        return bytes;
    }

    private Map<String, byte[]> copiedOut(Path image) throws IOException {
        Path out = Files.createTempDirectory(folder, "out");
        Tool.run("mcopy", "-s", "-n", "-i", image.toString(), "::", out.toString());
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(out)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                files.put(out.relativize(file).toString(), Files.readAllBytes(file));
            }
        }
        return files;
    }
}
