package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.device.CardSource;
import bootmend.device.FaultingDevice;
import bootmend.device.PartitionWindow;
import bootmend.device.RecordingDevice;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.finding.Severity;
import bootmend.fixtures.DamagedCard;
import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeRequest;
import bootmend.operation.TriedChange;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The check on whole cards, damaged ones above all; what each damage is stands in the catalogue of damaged cards. */
class CheckJobTest {

    private static final Path CARD = Path.of("/cards/lab.img");

    static List<String> damages() {
        return DamagedCards.ids();
    }

    @ParameterizedTest
    @MethodSource("damages")
    void anyDamageGivesFindingsOrAnErrorThatSaysWhatToDo(String id) throws IOException {
        RecordingDevice disk = new RecordingDevice(DamagedCards.card(id).disk());
        try {
            assertThat(check(disk).findings()).extracting(Finding::id).isNotEmpty();
        } catch (CardException e) {
            assertThat(new StepNames().remedy(e)).isNotBlank();
        }
        assertThat(disk.writes()).isEmpty();
        // 64 MiB of clusters, two FAT copies: no damage makes the check read the volume over and over.
        assertThat(disk.bytesRead()).isLessThan(32L << 20);
    }

    @ParameterizedTest
    @CsvSource({
        "config-utf16, config-not-plain-text",
        "config-utf16-no-mark, config-not-plain-text",
        "config-utf8-mark, config-byte-order-mark",
        "config-cr-only, config-bare-line-ends",
        "config-typographic-quotes, value-not-a-number",
        "config-txt-txt, config-misnamed",
        "config-no-extension, config-misnamed",
        "config-blank-before-dot, config-misnamed",
        "boot-sector-zeroed, volume-damaged",
        "gpt-first-header-bad, volume-warning",
        "image-cut-off-in-kernel, kernel-damaged"
    })
    void aDamageIsFoundAsWhatItIs(String id, String rule) throws CardException, IOException {
        assertThat(check(DamagedCards.card(id).disk()).findings())
                .extracting(Finding::id)
                .contains(rule);
        DamagedCard damaged = DamagedCards.card(id);
        assertThat(check(damaged.healthy()).findings()).extracting(Finding::id).doesNotContain(rule);
    }

    /** The catalogue's cards hold firmware, kernels and a device tree for pi4 alone. */
    @Test
    void theBoardsAreThoseThatTheCardCanBoot() throws CardException, IOException {
        CheckView view = check(DamagedCards.card("config-odd-case").healthy());
        assertThat(view.boards()).containsExactly("pi4");
        assertThat(view.boardsGiven()).isFalse();
        assertThat(view.hasBlocker()).isTrue();
        // Four tuning lines, and root= on a card that has no second partition.
        assertThat(view.count(Severity.BLOCKER)).isEqualTo(5);
    }

    @Test
    void aReadThatFailsAnywhereIsAnErrorOrLeavesAFinding() throws CardException, IOException {
        BlockDevice disk = DamagedCards.card("config-odd-case").healthy();
        RecordingDevice whole = new RecordingDevice(disk);
        List<Finding> healthy = check(whole).findings();
        int reads = whole.reads().size();
        for (int n = 1; n <= reads; n += Math.max(1, reads / 40)) {
            try {
                assertThat(check(FaultingDevice.atRead(disk, n)).findings()).isNotEqualTo(healthy);
            } catch (CardException e) {
                assertThat(new StepNames().remedy(e)).isNotBlank();
            }
        }
        assertThat(reads).isPositive();
    }

    @Test
    void secretsAreNamedAndNeverShown() throws CardException, IOException {
        CheckView view = check(
                card(Map.of("config.txt", "", "wpa_supplicant.conf", "network={\n psk=\"bench-key\"\n}\n", "ssh", "")),
                BoardRequest.none());
        assertThat(view.findings())
                .filteredOn(finding -> finding.where().path().equals("wpa_supplicant.conf"))
                .extracting(Finding::id)
                .containsExactly("secret-on-card");
        assertThat(view.findings()).extracting(Finding::id).contains("remote-login-enabled");
        assertThat(view.toString()).doesNotContain("bench-key");
    }

    /** "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86: tryboot.txt is read in place of config.txt. */
    @Test
    void aTryOnceStartIsCheckedForWhatItReads() throws CardException, IOException {
        BlockDevice disk = card(Map.of("config.txt", "gpu_mem=64\n", "tryboot.txt", "gpu_mem=64\narm_freq=2000\n"));
        BoardRequest once = new BoardRequest(
                Optional.of("pi4"),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.of(true),
                List.of());
        assertThat(check(disk, once).findings())
                .filteredOn(finding -> finding.id().equals("tuning-line-active"))
                .extracting(finding -> finding.where().words())
                .containsExactly("tryboot.txt line 2");
        assertThat(check(disk, BoardRequest.of("pi4")).findings())
                .filteredOn(finding -> finding.id().equals("tryboot-file"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.what()).contains("1 active line, arm_freq=2000 (line 2)"));
    }

    private static SparseDisk card(Map<String, String> files) throws CardException, IOException {
        FatSpec spec = FatSpec.fat16(5000).build();
        SparseDisk disk = spec.emptyDisk();
        FatBuilder builder = new FatBuilder(spec);
        files.forEach((name, text) -> builder.file(name, text.getBytes(StandardCharsets.US_ASCII)));
        builder.writeTo(disk, 0);
        return disk;
    }

    private static CheckView check(BlockDevice disk, BoardRequest board) throws CardException, IOException {
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            return new CheckJob(workplace(host, disk)).run(new CheckRequest(CardRequest.of(CARD), Purpose.SHIP, board));
        }
    }

    @Test
    void aChangeThatWasInterruptedBlocks() throws CardException, IOException {
        BlockDevice disk = DamagedCards.card("config-odd-case").healthy().copy();
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            try {
                TriedChange.make(
                        workplace(host, FaultingDevice.atWrite(disk, 3)),
                        CardRequest.of(CARD),
                        ChangeRequest.ToStock.PLAIN);
            } catch (CardException cut) {
                assertThat(cut.kind()).isEqualTo(CardException.Kind.INTERRUPTED);
            }
            assertThat(new CheckJob(workplace(host, disk)).run(request()).findings())
                    .extracting(Finding::id)
                    .contains("change-interrupted");
        }
    }

    private static CheckView check(BlockDevice disk) throws CardException, IOException {
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            return new CheckJob(workplace(host, disk)).run(request());
        }
    }

    private static CheckRequest request() {
        return new CheckRequest(CardRequest.of(CARD), Purpose.SHIP, BoardRequest.none());
    }

    private static Workplace workplace(FileSystem host, BlockDevice disk) {
        Clock clock = Clock.fixed(Instant.parse("2026-03-02T07:45:10Z"), ZoneOffset.UTC);
        return new Workplace(
                host.getPath("/home"),
                clock,
                (path, forChanging) -> CardSource.of(path, new PartitionWindow(disk, 0, disk.getSize())));
    }
}
