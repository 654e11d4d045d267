package bootmend.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SampleBootFiles;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.Made;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Resets cards that mkfs.fat and mcopy made, and has mtools, fsck.fat and fat32-lib say what came of it. */
class MkfsResetTest {

    private static final String TUNED = "# line follower\narm_freq=2350\nover_voltage=8\ndtparam=spi=on\n".repeat(30);
    private static final String STOCK = TUNED.replace("arm_freq", "#arm_freq").replace("over_voltage", "#over_voltage");

    @TempDir
    private Path folder;

    @BeforeEach
    void needTools() {
        Tool.need("mkfs.fat", "fsck.fat", "mcopy", "mtype", "mdir");
    }

    @ParameterizedTest(name = "FAT{0}, {1} sectors of {2} a cluster, {3} FATs, from byte {5}")
    @CsvSource({
        "12, 1, 512, 2, 1440, 0",
        "12, 4, 512, 1, 4096, 0",
        "12, 2, 4096, 2, 16384, 0",
        "16, 1, 512, 2, 8192, 0",
        "16, 8, 512, 1, 32768, 1048576",
        "16, 1, 4096, 2, 40960, 0",
        "32, 1, 512, 2, 40000, 0",
        "32, 2, 512, 1, 80000, 0",
        "32, 4, 512, 2, 200000, 1048576",
        "32, 1, 4096, 2, 280000, 0",
    })
    void resetOfACardMadeByOthers(int bits, int perCluster, int sector, int fats, int kibibytes, long offset)
            throws CardException, IOException {
        Map<String, byte[]> files = files();
        Path card = card(
                files, offset, kibibytes, "-F", "" + bits, "-s", "" + perCluster, "-S", "" + sector, "-f", "" + fats);
        String drive = card + "@@" + offset;
        List<String> checkedBefore = Tool.check(Images.volume(card, offset, folder.resolve("volume")));
        List<String> listedBefore = listed(drive);

        RealReset reset = RealReset.of(card, folder.resolve("home"), offset);

        assertThat(reset.change()).isInstanceOf(Made.OnCard.class);
        assertThat(((Made.OnCard) reset.change()).secondReader()).isEqualTo(sector == 512);
        assertThat(Tool.text("mtype", "-i", drive, "::config.txt")).isEqualTo(STOCK);
        if (sector == 512) {
            assertThat(reset.readWithFat32Lib("config.txt")).isEqualTo(STOCK.getBytes(StandardCharsets.US_ASCII));
        }
        assertThat(Tool.check(Images.volume(card, offset, folder.resolve("volume"))))
                .isSubsetOf(checkedBefore);
        assertThat(listed(drive)).isEqualTo(listedBefore).hasSizeGreaterThan(40);
        Map<String, byte[]> expected = new TreeMap<>(files);
        expected.put("config.txt", STOCK.getBytes(StandardCharsets.US_ASCII));
        assertThat(copiedOut(drive)).usingRecursiveComparison().isEqualTo(expected);
        reset.assertOnlyThePlansSectorsDiffer();
        reset.undoAndCompare();
    }

    private static Map<String, byte[]> files() {
        Map<String, byte[]> files = new TreeMap<>();
        files.put("start4.elf", SampleBootFiles.named("start4.elf", 30_000));
        files.put("config.txt", TUNED.getBytes(StandardCharsets.US_ASCII));
        files.put("A long name with blanks, for the book.txt", SampleBootFiles.named("book", 3_000));
        SampleBootFiles.overlayNames().stream()
                .limit(40)
                .forEach(name -> files.put("overlays/" + name + ".dtbo", SampleBootFiles.named(name + ".dtbo", 900)));
        return files;
    }

    private Path card(Map<String, byte[]> files, long offset, int kibibytes, String... shape) throws IOException {
        Path source = folder.resolve("source");
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            Path target = source.resolve(file.getKey());
            Files.createDirectories(target.getParent());
            Files.write(target, file.getValue());
        }
        Path volume = folder.resolve("made.img");
        Images.create(volume, kibibytes * 1024L);
        Tool.run(Stream.concat(
                        Stream.concat(Stream.of("mkfs.fat", "-n", "LABBOOT", "-i", "5C01AB07"), Stream.of(shape)),
                        Stream.of(volume.toString()))
                .toArray(String[]::new));
        for (String top :
                List.of("start4.elf", "config.txt", "A long name with blanks, for the book.txt", "overlays")) {
            Tool.run("mcopy", "-s", "-i", volume.toString(), source.resolve(top).toString(), "::");
        }
        if (offset == 0) {
            return volume;
        }
        SparseDisk disk = new MbrBuilder(offset + kibibytes * 1024L, 512)
                .partition(0x0C, offset / 512, kibibytes * 2L)
                .build();
        Images.copyInto(disk, volume, offset);
        Path card = folder.resolve("card.img");
        disk.writeTo(card);
        return card;
    }

    /** Every entry with size and time but the config file's and the count of free bytes. */
    private static List<String> listed(String drive) throws IOException {
        return Tool.text("mdir", "-a", "-/", "-i", drive, "::")
                .lines()
                .filter(line -> !line.startsWith("config") && !line.contains("bytes"))
                .toList();
    }

    private Map<String, byte[]> copiedOut(String drive) throws IOException {
        Path out = Files.createTempDirectory(folder, "out");
        Tool.run("mcopy", "-s", "-n", "-i", drive, "::", out.toString());
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(out)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                files.put(out.relativize(file).toString(), Files.readAllBytes(file));
            }
        }
        return files;
    }
}
