package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The main job by whole commands on the packaged jar: show, reset, undo, demo. */
class MainJobIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;
    private Path card;

    @BeforeEach
    void prepare() throws Exception {
        bootmend = new Bootmend(folder);
        card = TestCards.tuned(folder);
    }

    @Test
    void showNamesTheCardAndMarksItsTuningLines() throws Exception {
        Bootmend.Result result = bootmend.run("show", card);

        assertThat(result.code()).isZero();
        assertThat(result.err()).isEmpty();
        assertThat(result.out())
                .contains("tuned.img (image file, ")
                .contains("FAT16")
                .contains("LAB, 0000-BEEF")
                .containsPattern("2 +arm_freq +2100 MHz +700 to 2400 by board +active")
                .containsPattern("4 +\\[pi4] +over_voltage +6 steps +0 +active")
                .containsPattern("6 +\\[all] +arm_boost +1 +not published +active, left alone by a reset")
                .contains("2 active tuning lines: this card is not at stock.");
    }

    @Test
    void showAnswersWithOneJsonDocument() throws Exception {
        Bootmend.Result result = bootmend.run("show", "--json", card);

        JsonNode document = new ObjectMapper().readTree(result.out());
        assertThat(document.at("/partition/table").asText()).isEqualTo("none");
        assertThat(document.at("/partition/fatType").asText()).isEqualTo("FAT16");
        assertThat(document.at("/partition/serial").asText()).isEqualTo("0000-BEEF");
        assertThat(document.at("/partition/firstSector").asLong(-1)).isZero();
        assertThat(document.at("/config/path").asText()).isEqualTo("config.txt");
        assertThat(document.at("/config/bytes").asInt()).isEqualTo(TestCards.TUNED.length());
        assertThat(document.at("/config/sha256").asText()).hasSize(64);
        assertThat(document.at("/tuning/0/line").asInt()).isEqualTo(2);
        assertThat(document.at("/tuning/1/section").asText()).isEqualTo("[pi4]");
        assertThat(document.at("/tuning/1/unit").asText()).isEqualTo("step");
        assertThat(document.at("/tuning/2/stock").isNull()).isTrue();
        assertThat(document.at("/stock").asBoolean(true)).isFalse();
    }

    @Test
    void resetThenUndoBringsTheSameBytesBack() throws Exception {
        byte[] before = Files.readAllBytes(card);

        Bootmend.Result reset = bootmend.run("reset", "--yes", card);
        assertThat(reset.code()).isZero();
        assertThat(reset.out())
                .contains("before  arm_freq=2100")
                .contains("after   #arm_freq=2100")
                .contains("read back, and a second reader found the file as planned")
                .contains("Undo record: " + bootmend.home())
                .contains("The card is safe to take out.");
        assertThat(Files.readAllBytes(card)).isNotEqualTo(before);
        assertThat(bootmend.run("show", card).out()).contains("No active line tunes this card: it is at stock.");

        Bootmend.Result undo = bootmend.run("undo", "--yes", card);
        assertThat(undo.code()).isZero();
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void resettingTwiceWritesNothingTheSecondTime() throws Exception {
        bootmend.run("reset", "--yes", card);
        byte[] once = Files.readAllBytes(card);

        Bootmend.Result again = bootmend.run("reset", "--yes", card);

        assertThat(again.code()).isZero();
        assertThat(again.out()).contains("at stock already; nothing to do");
        assertThat(Files.readAllBytes(card)).isEqualTo(once);
    }

    @Test
    void dryRunShowsThePlanAndWritesNothing() throws Exception {
        byte[] before = Files.readAllBytes(card);

        Bootmend.Result result = bootmend.run("reset", "--dry-run", "--remove", card);

        assertThat(result.code()).isZero();
        assertThat(result.out())
                .contains("after   (taken out)")
                .containsPattern("To write: \\d+ sectors \\(")
                .contains("Nothing was written (--dry-run).");
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
        assertThat(bootmend.home()).doesNotExist();
    }

    @Test
    void resetAnswersWithPlanAndChangeAsJson() throws Exception {
        Bootmend.Result result = bootmend.run("reset", "--yes", "--json", card);

        JsonNode document = new ObjectMapper().readTree(result.out());
        assertThat(document.at("/plan/sectorsWritten").asInt()).isPositive();
        assertThat(document.at("/plan/steps")).hasSize(3);
        assertThat(document.at("/change/verified").asBoolean()).isTrue();
        assertThat(Path.of(document.at("/change/undoRecord").asText())).exists();
        assertThat(result.err()).contains("The card is safe to take out.");
    }

    @Test
    void arrangesTheDemoAndWalksTheMainJobOnIt() throws Exception {
        Path cards = folder.resolve("demo");

        Bootmend.Result demo = bootmend.run("demo", cards);

        assertThat(demo.code()).isZero();
        assertThat(demo.out())
                .containsSubsequence(
                        "> bootmend show",
                        "this card is not at stock",
                        "> bootmend reset --yes",
                        "The card is safe to take out.",
                        "> bootmend show",
                        "it is at stock");
        assertThat(cards.resolve("records")).isDirectory();
        assertThat(bootmend.home()).doesNotExist();

        Bootmend.Result again = bootmend.run("demo", cards);
        assertThat(again.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(again.err()).contains("is there already and was left alone");
    }
}
