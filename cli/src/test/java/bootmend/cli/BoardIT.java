package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a board runs, by whole commands on the packaged jar. Stock values and volts: "Overclocking options",
 * config_txt/overclocking.adoc, commit 6e5f9446; revision codes: "Revision codes", revision-codes.adoc, commit
 * 0456a78c.
 */
class BoardIT {

    private static final String SECTIONS = """
            arm_freq=1600
            [pi4]
            arm_freq=2000
            over_voltage=6
            gpu_freq=600
            sdram_freq=3200
            [pi5]
            arm_freq=2600
            [none]
            force_turbo=1
            [all]
            [gpio4=1]
            temp_limit=80
            """;

    @TempDir
    private Path folder;

    private Bootmend bootmend;
    private Path card;

    @BeforeEach
    void prepare() throws Exception {
        bootmend = new Bootmend(folder);
        card = TestCards.with(folder, "cart.img", SECTIONS.getBytes(StandardCharsets.US_ASCII));
    }

    /** One word may be longer: a path, a hash, or a command to copy. */
    @Test
    void whereNobodySaysHowWideTheTerminalIsEveryLineFitsIn80Columns() throws Exception {
        Path card = TestCards.tuned(folder);
        for (Object[] command : new Object[][] {
            {"show", card},
            {"show", "--board", "pi4", card},
            {"check", "--for", "ship", card},
            {"check", "--for", "ship", card, folder.resolve("none.img")},
            {"explain", "pi4"},
            {"explain", "over_voltage"},
            {"board", "c03112"},
            {"reset", "--dry-run", card}
        }) {
            assertThat(bootmend.runWithoutWidth(command).out().lines())
                    .allMatch(line -> line.length() <= 80 || line.contains(folder.toString()));
        }
    }

    @Test
    void showCarriesTheEffectiveValuesOfABoardAsJson() throws Exception {
        JsonNode document = json("show", "--json", "--board", "pi4", card);

        assertThat(document.at("/board").asText()).isEqualTo("pi4");
        assertThat(document.at("/effective").findValuesAsText("key"))
                .containsExactly(
                        "arm_freq",
                        "core_freq",
                        "h264_freq",
                        "isp_freq",
                        "v3d_freq",
                        "hevc_freq",
                        "sdram_freq",
                        "over_voltage",
                        "temp_limit");
        assertThat(document.at("/effective").findValuesAsText("state"))
                .containsExactly("set", "set", "set", "set", "set", "set", "ignored", "set", "depends");
        JsonNode clock = document.at("/effective/0");
        assertThat(clock.at("/value").asText()).isEqualTo("2000");
        assertThat(clock.at("/file").asText()).isEqualTo("config.txt");
        assertThat(clock.at("/line").asInt()).isEqualTo(3);
        assertThat(clock.at("/percent").asDouble()).isBetween(33.3, 33.4);
        assertThat(clock.has("volts")).isFalse();
        assertThat(document.at("/effective/1/setBy").asText()).isEqualTo("gpu_freq");
        assertThat(document.at("/effective/6/reason").asText()).contains("pi4 does not read sdram_freq");
        // Documentation repository, issue 1772: no volts follow from a step on this board.
        assertThat(document.at("/effective/7").has("volts")).isFalse();
        assertThat(document.at("/effective/8/dependsOn/0").asText()).isEqualTo("the level of pin 4");
        assertThat(document.at("/effective/8/mayBeStock").asBoolean()).isTrue();
        assertThat(document.at("/tuning").findValuesAsText("effect"))
                .containsExactly(
                        "shadowed", "set", "set", "set", "ignored", "not for this board", "never applies", "depends");
        assertThat(document.at("/cautions/0/id").asText()).isEqualTo("limits");
        assertThat(document.has("boards")).isFalse();
    }

    @Test
    void showMarksEachLineByAWord() throws Exception {
        Bootmend.Result result = bootmend.run("show", "--board", "pi4", "--pin", "4=1", card);

        assertThat(result.err()).isEmpty();
        assertThat(result.out())
                .containsPattern("1 +arm_freq +1600 MHz +1500 +shadowed by line 3")
                .containsPattern("10 +\\[none] +force_turbo +1 +0 +never applies")
                .containsPattern("arm_freq +2000 MHz +1500 +\\+33 % +config.txt line 3 +set")
                .containsPattern("over_voltage +6 steps +0 +config.txt line 4 +set")
                .containsPattern("temp_limit +80 degC +85 +config.txt line 13 +set")
                .contains("CPU power against stock", "volts of over_voltage on pi4")
                .contains("Cautions");
    }

    @Test
    void showWithoutABoardSetsBoardsSideBySide() throws Exception {
        String out = bootmend.run("show", card).out();

        // No kernel is on this card, so every known board is shown, those with the same answers in one column.
        assertThat(out)
                .contains("nothing on the card tells a board")
                .contains("What each known board would run:")
                .containsPattern("arm_freq +1600 MHz +2000 MHz +2600 MHz")
                .containsSubsequence("over_voltage  stock", "temp_limit    depends: 80 degC");
        JsonNode boards = json("show", "--json", card).at("/boards");
        assertThat(boards).hasSize(18);
        assertThat(boards.at("/15/board").asText()).isEqualTo("pi5");
        assertThat(boards.at("/15/effective/0/value").asText()).isEqualTo("2600");
    }

    @Test
    void aRevisionCodeSaysWhichBoardItIs() throws Exception {
        assertThat(json("show", "--json", "--revision", "c03111", card)
                        .at("/board")
                        .asText())
                .isEqualTo("pi4");
    }

    @Test
    void aBoardThatIsNotKnownIsWrongUsage() throws Exception {
        Bootmend.Result result = bootmend.run("show", "--board", "pi9", card);

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err())
                .contains("bootmend knows no board pi9")
                .contains("pi4")
                .hasLineCount(1);
    }

    @Test
    void explainTellsWhatAKeyIs() throws Exception {
        assertThat(bootmend.run("explain", "over_voltage").out())
                .containsPattern("range +-16 to 8")
                .containsPattern("stock +0 on every board")
                .contains("Overclocking options")
                .contains("warranty");
        assertThat(json("explain", "--json", "arm_freq").at("/key/unit").asText())
                .isEqualTo("MHz");
    }

    @Test
    void explainTellsWhatABoardIs() throws Exception {
        JsonNode board = json("explain", "--json", "pi4").at("/board");

        assertThat(board.at("/chip").asText()).isEqualTo("BCM2711");
        assertThat(board.at("/volts")).isEmpty();
        assertThat(json("explain", "--json", "pi1")
                        .at("/board/volts/0/stockVolts")
                        .asDouble())
                .isEqualTo(1.2);
        assertThat(bootmend.run("explain", "pi4").out())
                .containsPattern("warranty bit +never set")
                .containsPattern("Volts\\s+of\\s+over_voltage\\s+cannot\\s+be\\s+told");
    }

    @Test
    void explainReadsAThrottleReport() throws Exception {
        // Values from memory and from several public copies that agree.
        assertThat(bootmend.run("explain", "0x50005").out())
                .containsPattern("bit 0 +supply under-voltage now")
                .containsPattern("bit 18 +throttled since boot");
    }

    @Test
    void explainTellsWhatARuleIs() throws Exception {
        assertThat(bootmend.run("explain", "warranty-bit").out())
                .containsPattern("severity +ship: blocker")
                .containsPattern("what to do +Take")
                .contains("Overclocking options");
    }

    @Test
    void explainNamesNearWords() throws Exception {
        Bootmend.Result result = bootmend.run("explain", "arm_frq");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("Did you mean arm_freq");
    }

    @Test
    void boardDecodesRevisionCodes() throws Exception {
        assertThat(bootmend.run("board", "c03111").out())
                .containsPattern("board +pi4, type number 0x11")
                .containsPattern("memory +4 GB")
                .containsPattern("warranty bit +never set on this board");
        assertThat(bootmend.run("board", "a02082").out())
                .containsPattern("board +pi3")
                .containsPattern("memory +1 GB");
        assertThat(bootmend.run("board", "d03114").out())
                .containsPattern("revision +1.4")
                .containsPattern("memory +8 GB");
        JsonNode small = json("board", "--json", "902120");
        assertThat(small.at("/board").asText()).isEqualTo("pi02");
        assertThat(small.at("/memoryMegabytes").asInt()).isEqualTo(512);
        // An old-style code; value from memory.
        assertThat(bootmend.run("board", "000e").out()).contains("(old style)").containsPattern("board +pi1");
    }

    private JsonNode json(Object... arguments) throws Exception {
        Bootmend.Result result = bootmend.run(arguments);
        assertThat(result.code()).isZero();
        return new ObjectMapper().readTree(result.out());
    }
}
