package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import bootmend.view.TuningView;
import bootmend.workplace.MemoryCard;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ResetJobTest {

    private static final String TUNED = "# arm cart\narm_freq=2350\ndtparam=spi=on\nover_voltage=8\n";
    private static final String STOCK = "# arm cart\n#arm_freq=2350\ndtparam=spi=on\n#over_voltage=8\n";

    static Stream<FatSpec> specs() {
        return Stream.of(
                        FatSpec.fat12(3000),
                        FatSpec.fat16(5000),
                        FatSpec.fat32(66000),
                        FatSpec.fat16(5000).bytesPerSector(4096),
                        FatSpec.fat32(66000).activeFat(1))
                .map(FatSpec.Builder::build);
    }

    @ParameterizedTest
    @MethodSource("specs")
    void showResetShowUndo(FatSpec spec) throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig(spec, TUNED);
        SparseDisk before = card.disk.copy();

        CardView tuned = card.show();
        assertThat(tuned.isStock()).isFalse();
        assertThat(tuned.partition().fatType()).isEqualTo(spec.kind().name());
        assertThat(tuned.partition().label()).isEqualTo("BOOT");
        assertThat(tuned.partition().serial()).isEqualTo("5C01-AB07");
        assertThat(tuned.tuning()).extracting(TuningView::line).containsExactly(2, 4);
        assertThat(card.lastJob().writes()).isEmpty();

        assertThat(card.reset(ChangeRequest.ToStock.PLAIN)).isTrue();
        assertThat(card.text("config.txt")).isEqualTo(STOCK);
        assertThat(card.show().isStock()).isTrue();

        assertThat(card.undo()).isTrue();
        assertThat(card.disk.differingSectors(before)).isEmpty();
    }

    @Test
    void aSecondResetWritesNothing() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig(TUNED);
        card.reset(ChangeRequest.ToStock.PLAIN);
        SparseDisk once = card.disk.copy();

        assertThat(card.reset(ChangeRequest.ToStock.PLAIN)).isFalse();

        assertThat(card.lastJob().writes()).isEmpty();
        assertThat(card.disk.differingSectors(once)).isEmpty();
    }

    /** Stock values: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446. */
    @Test
    void linesAtStockAreLeftAlone() throws CardException, IOException {
        String atStock = "force_turbo=0\ntemp_limit=85\nover_voltage=0\n[pi400]\narm_freq=1800\ngpu_freq=500\n";
        MemoryCard card = MemoryCard.withConfig(atStock);

        assertThat(card.show().isStock()).isTrue();
        assertThat(card.show().tuning())
                .extracting(TuningView::state)
                .containsOnly("set to stock")
                .hasSize(5);
        assertThat(card.reset(ChangeRequest.ToStock.PLAIN)).isFalse();
        assertThat(card.lastJob().writes()).isEmpty();
        assertThat(card.text("config.txt")).isEqualTo(atStock);
    }

    /** Where it is not sure on every board that reads a line, the line goes. */
    @Test
    void linesThatAreStockOnSomeBoardsOnlyAreReset() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig(
                "force_turbo=0\narm_freq=1500\ninitial_turbo=0\n[pi4]\narm_freq=1800\n[pi5]\nv3d_freq=960\n");

        assertThat(card.reset(ChangeRequest.ToStock.PLAIN)).isTrue();
        assertThat(card.text("config.txt"))
                .isEqualTo("force_turbo=0\n#arm_freq=1500\n#initial_turbo=0\n[pi4]\n#arm_freq=1800\n"
                        + "[pi5]\n#v3d_freq=960\n");
    }

    @Test
    void parametersThatTuneGoAndTheOthersOnTheirLineStay() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig("dtparam=sd_overclock=100\ndtparam=audio=on,sd_overclock=83,spi=on\n"
                + "dtoverlay=sdhost,overclock_50=84\ndtoverlay=lab-arm,speed=2\ndtparam=i2c_arm=on\n");

        assertThat(card.show().isStock()).isFalse();
        assertThat(card.reset(ChangeRequest.ToStock.PLAIN)).isTrue();
        assertThat(card.text("config.txt"))
                .isEqualTo("#dtparam=sd_overclock=100\ndtparam=audio=on,spi=on\n"
                        + "dtoverlay=sdhost\ndtoverlay=lab-arm,speed=2\ndtparam=i2c_arm=on\n");
        assertThat(card.show().isStock()).isTrue();
        assertThat(card.reset(ChangeRequest.ToStock.PLAIN)).isFalse();
        assertThat(card.undo()).isTrue();
        assertThat(card.text("config.txt")).startsWith("dtparam=sd_overclock=100\n");
    }

    /** Keys that no reset may leave behind in silence; names from the pages in the table of keys. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "dvfs=1",
                "sdram_schmoo=0x02000020",
                "sdram_lab_timing=1",
                "never_over_voltage=1",
                "current_limit_override=0x5A000020",
                "over_voltage_avs=25000",
                "disable_auto_turbo=1",
                "dtparam=sdio_overclock=100",
                "dtparam=overclock_50=100",
                "program_usb_boot_mode=1",
                "lab_freq=500"
            })
    void everyTuningKeyIsSeenAndReset(String line) throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig(line + "\n");
        assertThat(card.show().isStock()).isFalse();
        assertThat(card.reset(ChangeRequest.ToStock.PLAIN)).isTrue();
        assertThat(card.text("config.txt")).isEqualTo("#" + line + "\n");
    }

    @Test
    void previewWritesNothingAndNamesTheLines() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig(TUNED);
        {
            TriedChange change =
                    TriedChange.of(card.workplace(), CardRequest.of(Path.of("card")), ChangeRequest.ToStock.PLAIN);
            assertThat(change.lines())
                    .containsExactly(
                            SampleChange.line("config.txt", 2, "arm_freq=2350", "#arm_freq=2350"),
                            SampleChange.line("config.txt", 4, "over_voltage=8", "#over_voltage=8"));
            assertThat(change.plan().sectorsWritten())
                    .isEqualTo(change.plan().steps().stream()
                            .mapToInt(PlanView.Step::sectors)
                            .sum());
        }
        assertThat(card.lastJob().writes()).isEmpty();
        assertThat(card.text("config.txt")).isEqualTo(TUNED);
    }

    @Test
    void removeTakesTheLinesOut() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig(TUNED);
        card.reset(new ChangeRequest.ToStock(true, Set.of()));

        assertThat(card.text("config.txt")).isEqualTo("# arm cart\ndtparam=spi=on\n");
    }

    @Test
    void removeMayLeaveAnEmptyFile() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig(FatSpec.fat32(66000).build(), "arm_freq=2000");
        SparseDisk before = card.disk.copy();
        card.reset(new ChangeRequest.ToStock(true, Set.of()));
        assertThat(card.text("config.txt")).isEmpty();

        card.undo();
        assertThat(card.disk.differingSectors(before)).isEmpty();
    }

    @Test
    void lineEndsStay() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig("a=1\r\narm_freq=2000\r\n[pi4]\r\nover_voltage=6");
        card.reset(ChangeRequest.ToStock.PLAIN);

        assertThat(card.text("config.txt")).isEqualTo("a=1\r\n#arm_freq=2000\r\n[pi4]\r\n#over_voltage=6");
    }

    @Test
    void linesUnderNoneStay() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig("[none]\narm_freq=2200\n[all]\narm_freq=2100\n");
        card.reset(ChangeRequest.ToStock.PLAIN);

        assertThat(card.text("config.txt")).isEqualTo("[none]\narm_freq=2200\n[all]\n#arm_freq=2100\n");
    }

    @Test
    void keysThatAreShownOnlyAreResetWhenNamed() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig("arm_boost=1\n");

        assertThat(card.reset(ChangeRequest.ToStock.PLAIN)).isFalse();
        assertThat(card.reset(new ChangeRequest.ToStock(false, Set.of("arm_boost"))))
                .isTrue();
        assertThat(card.text("config.txt")).isEqualTo("#arm_boost=1\n");
        assertStops(
                () -> card.begin(new ChangeRequest.ToStock(false, Set.of("dtparam"))),
                CardException.Kind.USAGE,
                "dtparam is no tuning key");
    }

    @Test
    void includedFilesAreResetToo() throws CardException, IOException {
        MemoryCard card = MemoryCard.of(
                FatSpec.fat32(66000).build(),
                builder -> builder.directory("lab")
                        .file(
                                "config.txt",
                                MemoryCard.ascii("include lab/tuning.txt\narm_freq=2000\ninclude gone.txt\n"))
                        .file("lab/tuning.txt", MemoryCard.ascii("over_voltage=6\ninclude config.txt\n")));
        SparseDisk before = card.disk.copy();

        assertThat(card.show().tuning()).extracting(TuningView::file).containsExactly("config.txt", "lab/tuning.txt");
        assertThat(card.show().notes()).hasSize(2);
        assertThat(card.show().notes().get(0)).contains("gone.txt", "not on the boot partition");
        assertThat(card.show().notes().get(1)).contains("config.txt, which is being read already");
        card.reset(ChangeRequest.ToStock.PLAIN);
        assertThat(card.text("config.txt")).isEqualTo("include lab/tuning.txt\n#arm_freq=2000\ninclude gone.txt\n");
        assertThat(card.text("lab/tuning.txt")).isEqualTo("#over_voltage=6\ninclude config.txt\n");

        card.undo();
        assertThat(card.disk.differingSectors(before)).isEmpty();
    }

    /** One file under two names must be planned once: a second plan would leave the first one's clusters lost. */
    @ParameterizedTest
    @ValueSource(strings = {"lab/tuning-a.txt", "lab//Tuning-A.txt", "/LAB\\tuning-a.txt", "lab/TUNING~1.TXT"})
    void aFileIncludedUnderTwoNamesIsChangedOnce(String again) throws CardException, IOException {
        MemoryCard card = MemoryCard.of(
                FatSpec.fat32(66000).build(),
                builder -> builder.directory("lab")
                        .file("config.txt", MemoryCard.ascii("include lab/tuning-a.txt\ninclude " + again + "\n"))
                        .file("lab/tuning-a.txt", MemoryCard.ascii("over_voltage=6\n")));
        assertThat(card.show().tuning()).hasSize(1);
        byte[] free = card.disk.toBytes(512 + 488, 4);

        card.reset(ChangeRequest.ToStock.PLAIN);

        assertThat(card.text("lab/tuning-a.txt")).isEqualTo("#over_voltage=6\n");
        assertThat(card.disk.toBytes(512 + 488, 4)).isEqualTo(free);
    }

    @Test
    void whatIsNoConfigFileHasItsOwnWords() throws CardException, IOException {
        MemoryCard none = MemoryCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        MemoryCard folder = MemoryCard.of(FatSpec.fat16(5000).build(), builder -> builder.directory("config.txt"));
        MemoryCard large = MemoryCard.of(
                FatSpec.fat16(5000).build(), builder -> builder.add("", FatItem.zeros("config.txt", (1 << 20) + 1)));
        MemoryCard largest = MemoryCard.of(
                FatSpec.fat16(5000).build(), builder -> builder.add("", FatItem.zeros("config.txt", 1 << 20)));

        assertNoConfig(none, "has no config.txt");
        assertNoConfig(folder, "is a folder");
        assertNoConfig(large, "has 1048577 bytes");
        assertThat(largest.show().config().orElseThrow().bytes()).isEqualTo(1 << 20);
    }

    @Test
    void aConfigFileThatIsNotWholeIsShownButNotReset() throws CardException, IOException {
        MemoryCard card = MemoryCard.withConfig("arm_freq=2000\n".repeat(200));
        card.layout.setFatEntries(card.disk, card.layout.chain("config.txt")[2], 0);

        assertThat(card.show().tuning()).isNotEmpty();
        assertThat(card.show().notes()).anyMatch(note -> note.contains("marked free"));
        assertStops(
                () -> card.begin(ChangeRequest.ToStock.PLAIN), CardException.Kind.REFUSED, "could not be read whole");
    }

    @Test
    void nothingToUndo() throws IOException {
        MemoryCard card = MemoryCard.withConfig(TUNED);

        assertStops(card::undo, CardException.Kind.REFUSED, "no change to this card");
    }

    private static void assertNoConfig(MemoryCard card, String words) throws CardException, IOException {
        assertThat(card.show().configProblem().orElseThrow()).hasMessageContaining(words);
        assertStops(() -> card.begin(ChangeRequest.ToStock.PLAIN), CardException.Kind.UNREADABLE, words);
    }

    private static void assertStops(ThrowingCallable work, CardException.Kind kind, String words) {
        assertThatThrownBy(work).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(kind);
            assertThat(e).hasMessageContaining(words);
            assertThat(new StepNames().remedy(e)).endsWith(".");
        });
    }
}
