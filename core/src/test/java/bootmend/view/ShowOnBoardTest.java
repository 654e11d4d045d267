package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bootmend.CardException;
import bootmend.fixtures.DemoCards;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryCard;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** What a card comes to on a board; the rules behind the values have their own tests beside the resolver. */
class ShowOnBoardTest {

    private static final CardRequest CARD = CardRequest.of(Path.of("lab-card.img"));

    @Test
    void everyTuningLineSaysWhatBecomesOfItOnTheBoard() throws CardException, IOException {
        ShowView view = show(
                "pi4",
                "arm_freq=1600",
                "arm_freq=1800",
                "sdram_freq=3200",
                "[pi5]",
                "arm_freq=2500",
                "[none]",
                "over_voltage=8",
                "[all]",
                "[gpio4=1]",
                "over_voltage=2",
                "[all]",
                "temp_limit=90",
                "#force_turbo=1");

        assertThat(view.card().tuning())
                .extracting(line -> line.effect().map(LineEffectView::words).orElse("-"))
                .containsExactly(
                        "shadowed by line 2",
                        "set",
                        "ignored: pi4 does not read sdram_freq (published for: before the pi4 family)",
                        "not for this board",
                        "never applies",
                        "depends on the level of pin 4",
                        "set, taken as 85",
                        "-");
        assertThat(view.card().tuning()).extracting(TuningView::state).first().isEqualTo("active");
        assertThat(view.card().tuning().get(0).stock()).contains("1500");
    }

    @Test
    void aLineIsShadowedByTheSureOneAmongSeveralThatMayCount() throws CardException, IOException {
        ShowView view = show("pi4", "arm_freq=1500", "arm_freq=1600", "[gpio4=1]", "arm_freq=1800");

        assertThat(view.card().tuning().get(0).effect())
                .map(LineEffectView::words)
                .contains("shadowed by line 2");
    }

    @Test
    void aLineThatHangsOnHowTheBoardTakesItsValueSaysSo() throws CardException, IOException {
        ShowView view = show("pi4", "arm_freq=fast");

        assertThat(view.card().tuning().get(0).effect())
                .map(LineEffectView::words)
                .contains("depends on what the board makes of arm_freq=fast, which is no number");
    }

    @Test
    void anIncludedFileIsNamed() throws CardException, IOException {
        MemoryCard card = card(builder -> builder.file(
                        "config.txt", MemoryCard.ascii("arm_freq=1600\ninclude ROBOTS.TXT\n[pi5]\ninclude legs.txt\n"))
                .file("robots.txt", MemoryCard.ascii("arm_freq=1800\n"))
                .file("legs.txt", MemoryCard.ascii("arm_freq=2600\n")));

        ShowView view = show(card, BoardRequest.of("pi4"));

        assertThat(view.card().tuning())
                .extracting(line -> line.effect().orElseThrow().words())
                .containsExactly(
                        "shadowed by line 1 of " + view.card().tuning().get(1).file(),
                        "set",
                        "not for this board: no include line that counts there names its file");
        assertThat(view.boards().get(0).effective().get(0).file())
                .isEqualTo(view.card().tuning().get(1).file());
    }

    @Test
    void includesThatLeadBackAreNoted() throws CardException, IOException {
        MemoryCard card = card(builder -> builder.file("config.txt", MemoryCard.ascii("include robots.txt\n"))
                .file("robots.txt", MemoryCard.ascii("include config.txt\narm_freq=1800\n")));

        assertThat(show(card, BoardRequest.of("pi4")).card().notes())
                .containsExactly("Line 1 of robots.txt names config.txt, which is being read already; take one of the "
                        + "include lines out.");
    }

    @Test
    void effectiveValuesCarryTheirNumbers() throws CardException, IOException {
        // Stock and volts: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446.
        BoardView pi4 = show("pi4", "arm_freq=2000", "over_voltage=6", "gpu_freq=600")
                .boards()
                .get(0);

        assertThat(pi4.effective())
                .extracting(EffectiveView::key)
                .containsExactly(
                        "arm_freq", "core_freq", "h264_freq", "isp_freq", "v3d_freq", "hevc_freq", "over_voltage");
        EffectiveView clock = pi4.effective().get(0);
        assertThat(clock.stock()).containsExactly(1500L);
        assertThat(clock.percent().get(0)).isCloseTo(33.333, within(0.001));
        EffectiveView graphics = pi4.effective().get(1);
        assertThat(graphics.setBy()).isEqualTo("gpu_freq");
        assertThat(graphics.percent()).containsExactly(20.0);
        EffectiveView voltage = pi4.effective().get(6);
        // Documentation repository, issue 1772: no volts follow from a step on this board.
        assertThat(voltage.volts()).isEmpty();
        assertThat(pi4.cpuPower().orElseThrow().ratios()).isEmpty();
        assertThat(pi4.cpuPower().orElseThrow().unknown()).contains("differs from chip to chip");
        BoardView pi1 = show("pi1", "arm_freq=1000", "over_voltage=6").boards().get(0);
        assertThat(pi1.effective().get(1).volts()).contains(1.35);
        assertThat(pi1.cpuPower().orElseThrow().ratios().get(0)).isCloseTo(1.808, within(0.001));
    }

    @Test
    void whereTheVoltageIsNotKnownPowerStaysUnknown() throws CardException, IOException {
        PowerView power =
                show("pi4", "arm_freq=2000").boards().get(0).cpuPower().orElseThrow();

        assertThat(power.ratios()).isEmpty();
        assertThat(power.unknown()).isEqualTo("not published: the voltage that automatic scaling comes to");
    }

    @Test
    void aRevisionCodeSaysWhichBoardItIs() throws CardException, IOException {
        // d03114 is a pi4 of revision 4: "Revision codes", revision-codes.adoc, commit 0456a78c.
        ShowView view = show(
                card("arm_boost=1"),
                new BoardRequest(
                        Optional.empty(),
                        Optional.of("d03114"),
                        Optional.empty(),
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of()));

        assertThat(view.board()).contains("pi4");
        EffectiveView clock = view.boards().get(0).effective().get(0);
        assertThat(clock.setBy()).isEqualTo("arm_boost");
        assertThat(clock.value()).isEqualTo("1800");
        assertThat(clock.stock()).containsExactly(1800L);
        assertThat(clock.percent()).containsExactly(0.0);
        assertThat(view.boards().get(0).cpuPower()).isEmpty();
    }

    @Test
    void whatIsKnownOfTheBoardDecidesItsSections() throws CardException, IOException {
        MemoryCard card = card("[0xa1b2c3d4]\narm_freq=1600\n[all]\n[gpio4=1]\nover_voltage=2\n[all]\n"
                + "[EDID=LAB-PANEL]\ntemp_limit=80\n[all]\n[boot_partition=2]\ninitial_turbo=9\n[all]\n"
                + "[tryboot]\nforce_turbo=1");

        ShowView all = show(
                card,
                new BoardRequest(
                        Optional.of("pi4"),
                        Optional.empty(),
                        Optional.of("10000000a1b2c3d4"),
                        List.of("4=1"),
                        Optional.of(List.of("LAB-PANEL")),
                        Optional.of(true),
                        List.of("boot_partition=0x2")));
        ShowView none = show(
                card,
                new BoardRequest(
                        Optional.of("pi4"),
                        Optional.empty(),
                        Optional.of("0x1"),
                        List.of("4=0"),
                        Optional.of(List.of()),
                        Optional.of(false),
                        List.of("boot_partition=1")));

        assertThat(all.boards().get(0).effective())
                .extracting(EffectiveView::state)
                .containsOnly("set")
                .hasSize(5);
        assertThat(none.boards().get(0).effective()).isEmpty();
        assertThat(show(card, BoardRequest.of("pi4")).boards().get(0).effective())
                .extracting(EffectiveView::state)
                .containsOnly("depends")
                .hasSize(5);
    }

    @Test
    void withoutABoardEveryBoardThatTheCardCanBeMeantForAnswers() throws CardException, IOException {
        MemoryCard card = card(builder -> builder.file("config.txt", MemoryCard.ascii("[pi400]\narm_freq=2000\n"))
                .file("start4.elf", new byte[700])
                .file("fixup4.dat", new byte[600])
                .file("kernel8.img", new byte[700]));

        ShowView view = show(card, BoardRequest.none());

        assertThat(view.anyBootable()).isTrue();
        assertThat(view.boards()).extracting(BoardView::board).containsExactly("pi4", "pi400", "cm4", "cm4s");
        assertThat(view.boards())
                .filteredOn(board -> !board.effective().isEmpty())
                .extracting(BoardView::board)
                .containsExactly("pi400");
        assertThat(view.card().tuning().get(0).effect()).isEmpty();
    }

    @Test
    void aCardWithoutBootFilesIsAnsweredForEveryBoard() throws CardException, IOException {
        ShowView view = show(card("arm_freq=2000"), BoardRequest.none());

        assertThat(view.anyBootable()).isFalse();
        assertThat(view.boards()).hasSize(18);
    }

    @Test
    void startedOnceTheBoardReadsAnotherFile() throws CardException, IOException {
        // "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86.
        UnaryOperator<FatBuilder> files = builder -> builder.file("config.txt", MemoryCard.ascii("arm_freq=1600\n"))
                .file("tryboot.txt", MemoryCard.ascii("arm_freq=1700\n"));
        BoardRequest tryboot = new BoardRequest(
                Optional.of("pi4"),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.of(true),
                List.of());

        assertThat(value(show(card(files), tryboot))).isEqualTo("1700");
        assertThat(value(show(card(files), BoardRequest.of("pi4")))).isEqualTo("1600");
        assertThat(value(show(
                        card(builder ->
                                files.apply(builder).file("autoboot.txt", MemoryCard.ascii("[all]\ntryboot_a_b=1\n"))),
                        tryboot)))
                .isEqualTo("1600");
    }

    @Test
    void cautionsComeForWhatIsTunedAlone() throws CardException, IOException {
        assertThat(show("pi3", "force_turbo=1", "over_voltage=2").cautions())
                .extracting(CautionView::id)
                .containsExactly("limits", "warranty", "heat", "supply", "data");
        assertThat(show("pi4", "[pi3]", "force_turbo=1", "over_voltage=2").cautions())
                .isEmpty();
    }

    @Test
    void aMissingConfigFileIsPartOfTheView() throws CardException, IOException {
        ShowView view = show(card(builder -> builder), BoardRequest.of("pi4"));

        assertThat(view.card().configProblem()).isPresent();
        assertThat(view.boards()).isEmpty();
    }

    @Test
    void theAnswerForEveryBoardCostsNoMoreReadsThanALook() throws CardException, IOException {
        MemoryCard card = new MemoryCard(DemoCards.build(DemoCards.all().get(0)), 8192 * 512, null);

        ShowView view = show(card, BoardRequest.none());

        assertThat(view.anyBootable()).isTrue();
        assertThat(view.boards()).hasSize(18);
        assertThat(card.lastJob().reads()).hasSizeLessThanOrEqualTo(16);
        assertThat(card.lastJob().bytesRead()).isLessThanOrEqualTo(32 << 10);
    }

    private static String value(ShowView view) {
        return view.boards().get(0).effective().get(0).value();
    }

    private static ShowView show(String board, String... config) throws CardException, IOException {
        return show(card(String.join("\n", config) + "\n"), BoardRequest.of(board));
    }

    private static ShowView show(MemoryCard card, BoardRequest board) throws CardException, IOException {
        return new ShowJob(card.workplace()).run(CARD, board);
    }

    private static MemoryCard card(String config) throws IOException {
        return card(builder -> builder.file("config.txt", MemoryCard.ascii(config)));
    }

    private static MemoryCard card(UnaryOperator<FatBuilder> content) throws IOException {
        FatSpec spec = FatSpec.fat16(5000).build();
        SparseDisk disk = spec.emptyDisk();
        return new MemoryCard(disk, 0, content.apply(new FatBuilder(spec)).writeTo(disk, 0));
    }
}
