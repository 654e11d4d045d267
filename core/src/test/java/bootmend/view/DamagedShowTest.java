package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.CardSource;
import bootmend.device.PartitionWindow;
import bootmend.device.RecordingDevice;
import bootmend.fixtures.DamagedCard;
import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.CardFiles;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Damaged cards shown: what can be read is read, and what is seen on the way is said. */
class DamagedShowTest {

    private static final String PATH = "/cards/lab.img";
    private static final CardRequest CARD = CardRequest.of(Path.of(PATH));
    /** What {@code show} may cost on a healthy card; a damaged one may cost a few looks more. */
    private static final int MOST_READS = 32;

    private static final int MOST_BYTES = 64 << 10;

    private final MemoryWorkplace bench = new MemoryWorkplace();

    @AfterEach
    void close() throws IOException {
        bench.close();
    }

    @ParameterizedTest
    @MethodSource("bootmend.fixtures.DamagedCards#ids")
    void everyCardIsShownInFewReads(String id) throws CardException, IOException {
        SparseDisk disk = DamagedCards.card(id).disk();
        RecordingDevice card = new RecordingDevice(disk);
        Workplace workplace = new Workplace(
                bench.home(),
                Clock.systemUTC(),
                (path, forChanging) -> CardSource.of(path, new PartitionWindow(card, 0, disk.getSize())));

        CardView view = new ShowJob(workplace).run(CARD);

        assertThat(view.config().isPresent() || view.configProblem().isPresent())
                .isTrue();
        assertThat(card.writes()).isEmpty();
        assertThat(card.reads()).hasSizeLessThanOrEqualTo(MOST_READS);
        assertThat(card.bytesRead()).isLessThanOrEqualTo(MOST_BYTES);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "fat-first-copy-start-zeroed; copy 2 is read first",
                "dirty-bit-fat16; marked as still in use",
                "dirty-bits-fat32; marked as still in use",
                "dirty-boot-flag; marked as still in use",
                "hard-error-bit; met a read or write error",
                "boot-sector-zeroed; its backup in sector 6 was read",
                "boot-sector-noise; its backup in sector 6 was read",
                "boot-sector-signature-missing; its backup in sector 6 was read",
                "gpt-first-header-bad; the backup at the card's end",
                "gpt-first-header-zeroed; the backup at the card's end",
                "gpt-first-entries-bad; the backup at the card's end",
                "image-cut-off; cut off",
                "image-cut-off-in-kernel; cut off",
                "chain-loop-on-itself; loops back",
                "chain-starts-at-1; points outside",
                "chain-starts-out-of-range; outside",
                "chain-starts-free; marked free",
                "cross-linked; longer than the file's size",
                "chain-shorter-than-size; shorter than its size",
                "chain-longer-than-size; longer than the file's size",
                "size-without-chain; shorter than its size",
                "chain-without-size; longer than the file's size",
                "orphaned-long-names; long-name slots",
                "long-name-checksum-wrong; long-name slots",
                "config-utf8-mark; byte-order mark",
                "config-cr-only; CR without LF",
                "config-typographic-quotes; typographic quotes"
            })
    void saysWhatItSeesOnTheWay(String id, String words) throws CardException, IOException {
        bench.insert(PATH, DamagedCards.card(id).disk());

        assertThat(new ShowJob(bench.workplace()).run(CARD).notes())
                .anySatisfy(note -> assertThat(note).contains(words));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "config-txt-txt",
                "config-trailing-blank",
                "config-two-trailing-blanks",
                "config-blank-before-dot",
                "config-no-extension",
                "long-name-torn"
            })
    void namesAMisnamedConfigFile(String id) throws CardException, IOException {
        DamagedCard damaged = DamagedCards.card(id);
        bench.insert(PATH, damaged.disk());

        CardException problem =
                new ShowJob(bench.workplace()).run(CARD).configProblem().orElseThrow();

        assertThat(problem).hasMessageContaining("no config.txt, but a file named \"");
        assertThat(problem.steps()).containsExactly(NextStep.Plain.REPAIR_CARD);
        assertThatThrownBy(() -> bench.reset(PATH))
                .isInstanceOf(CardException.class)
                .hasMessage(problem.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"config-utf16", "config-utf16-no-mark", "config-utf16-big-endian"})
    void callsNoCardStockOfWhoseConfigFileNothingIsRead(String id) throws CardException, IOException {
        bench.insert(PATH, DamagedCards.card(id).disk());

        CardException problem =
                new ShowJob(bench.workplace()).run(CARD).configProblem().orElseThrow();

        assertThat(problem).hasMessageContaining("UTF-16");
        assertThat(problem.steps()).containsExactly(NextStep.Plain.REPAIR_CARD);
    }

    /** The files are those of the healthy card wherever the other FAT copy, or the backup, still has them whole. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "fat-second-copy-torn",
                "fat-second-copy-behind",
                "fat-first-copy-behind",
                "fat-first-copy-sector-zeroed",
                "fat-first-copy-start-zeroed",
                "boot-sector-zeroed",
                "boot-sector-noise",
                "boot-sector-signature-missing"
            })
    void readsEveryFileFromWhatIsStillWhole(String id) throws IOException {
        DamagedCard damaged = DamagedCards.card(id);

        assertThat(CardFiles.of(damaged.disk(), damaged.layout()))
                .isEqualTo(CardFiles.of(damaged.healthy(), damaged.layout()));
    }

    @Test
    void hasNoWarningAboutDemoCards() throws CardException, IOException {
        for (DemoCard demo : DemoCards.all()) {
            bench.insert(PATH, DemoCards.build(demo));
            assertThat(new ShowJob(bench.workplace()).run(CARD).notes())
                    .as(demo.fileName())
                    .isEqualTo(List.of());
        }
    }
}
