package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.device.system.FixedDisks;
import bootmend.device.system.LocalCards;
import bootmend.device.system.StubbornCards;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.GptBuilder;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.view.ShowJob;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Jobs on a disk that takes whole sectors only, tells no size and gives less than was asked: the same bytes come out as on
 * an image file.
 */
class StubbornDiskTest {

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-02-03T10:11:12Z"), ZoneOffset.UTC);
    private static final CardRequest CARD = CardRequest.of(Path.of("/dev/sdx"));

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({"512, 512", "512, 4096", "4096, 4096"})
    void showResetAndUndo(int logical, int physical) throws CardException, IOException {
        Path image = folder.resolve("card.img");
        card(logical).writeTo(image);
        byte[] before = Files.readAllBytes(image);
        Path copy = Files.copy(image, folder.resolve("copy.img"));
        reset(new Workplace(folder.resolve("file"), CLOCK, new LocalCards(FixedDisks.REFUSED)), CardRequest.of(copy));
        Workplace workplace = new Workplace(folder.resolve("disk"), CLOCK, new StubbornCards(image, logical, physical));

        assertThat(new ShowJob(workplace).run(CARD).tuning()).isNotEmpty();
        reset(workplace, CARD);
        assertThat(image).hasSameBinaryContentAs(copy);
        {
            TriedChange back = TriedChange.of(workplace, CARD, ChangeRequest.Undo.LAST);
            assertThat(back.apply()).isInstanceOf(Made.OnCard.class);
        }
        assertThat(Files.readAllBytes(image)).isEqualTo(before);
    }

    /** The whole volume is looked at, and its two FATs, which differ in one entry, are made the same. */
    @ParameterizedTest
    @CsvSource({"512, 512", "512, 4096", "4096, 4096"})
    void repair(int logical, int physical) throws CardException, IOException {
        SparseDisk disk = card(logical);
        byte[] before = disk.toBytes(0, (int) disk.getSize());
        long secondFat = 256L * 4096 + (long) spec(logical).reservedSectors() * logical + fatBytes(logical);
        disk.patch(secondFat + 3000, (byte) 0xF7, (byte) 0xFF);
        Path image = folder.resolve("card.img");
        disk.writeTo(image);
        Workplace workplace = new Workplace(folder.resolve("disk"), CLOCK, new StubbornCards(image, logical, physical));

        {
            TriedChange change = TriedChange.of(workplace, CARD, ChangeRequest.Repair.PLAIN);
            assertThat(change.isNothing()).isFalse();
            assertThat(change.apply()).isInstanceOf(Made.OnCard.class);
        }
        assertThat(Files.readAllBytes(image)).isEqualTo(before);
    }

    private static long fatBytes(int logical) {
        return (5002L * 2 + logical - 1) / logical * logical;
    }

    @ParameterizedTest
    @CsvSource({"512, 512", "4096, 4096"})
    void aGptOfWhichOnlyTheBackupIsLeft(int logical, int physical) throws CardException, IOException {
        SparseDisk disk = gpt(logical);
        disk.patch(logical, new byte[logical]);
        Path image = folder.resolve("card.img");
        disk.writeTo(image);
        Workplace workplace = new Workplace(folder.resolve("disk"), CLOCK, new StubbornCards(image, logical, physical));

        assertThat(new ShowJob(workplace).run(CARD).partition().table()).isEqualTo("GPT");
    }

    private static void reset(Workplace workplace, CardRequest card) throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(workplace, card, ChangeRequest.ToStock.PLAIN);
            assertThat(change.apply()).isInstanceOf(Made.OnCard.class);
        }
    }

    private static FatSpec spec(int logical) {
        return FatSpec.fat16(5000)
                .bytesPerSector(logical)
                .rootEntries(logical / 32 * 8)
                .serial(0x1AB)
                .build();
    }

    private static SparseDisk card(int logical) throws IOException {
        FatSpec spec = spec(logical);
        long start = 256L * 4096;
        SparseDisk disk = new MbrBuilder(start + spec.totalSectors() * logical + (1 << 20), logical)
                .partition(0x0E, start / logical, spec.totalSectors())
                .build();
        write(spec, disk, start);
        return disk;
    }

    private static SparseDisk gpt(int logical) throws IOException {
        FatSpec spec = spec(logical);
        long start = 256L * 4096;
        SparseDisk disk = new GptBuilder(start + spec.totalSectors() * logical + (1 << 20), logical)
                .partition(GptBuilder.BASIC_DATA, start / logical, spec.totalSectors(), "boot")
                .build();
        write(spec, disk, start);
        return disk;
    }

    private static void write(FatSpec spec, SparseDisk disk, long start) throws IOException {
        new FatBuilder(spec)
                .file("start.elf", new byte[2000])
                .file("config.txt", "arm_freq=2100\n".getBytes(StandardCharsets.US_ASCII))
                .writeTo(disk, start);
    }
}
