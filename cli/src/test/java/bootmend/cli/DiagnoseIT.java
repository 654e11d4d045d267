package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.cli.outcome.ExitCode;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Why a card does not boot, by whole commands on the packaged jar. What each board needs: "Boot options", config_txt/boot.adoc,
 * commit 0456a78c, and "The boot folder", configuration/boot_folder.adoc, commit 044dfa24.
 */
class DiagnoseIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;
    private Path card;

    @BeforeEach
    void prepare() throws Exception {
        bootmend = new Bootmend(folder);
        assertThat(bootmend.run("demo", folder.resolve("demo")).code()).isZero();
        try (var cards = Files.list(folder.resolve("demo"))) {
            card = cards.filter(file -> file.getFileName().toString().startsWith("lab-card-02"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    @Test
    void aHealthyCardGetsThroughAndTheBoardIsTheNextThingToLookAt() throws Exception {
        Bootmend.Result result = bootmend.run("diagnose", "--board", "pi4", card);

        assertThat(result.code()).as(result.err()).isZero();
        assertThat(result.out())
                .contains("pi4: boots as far as the card can tell; try the board")
                .contains("kernel8.img", "bcm2711-rpi-4-b.dtb", "boot memory");
    }

    @Test
    void aMissingStartFileStopsTheBoardsThatNeedItAndNoOthers() throws Exception {
        delete("start4.elf");

        Bootmend.Result pi4 = bootmend.run("diagnose", "--board", "pi4", card);
        assertThat(pi4.code()).isEqualTo(ExitCode.BLOCKER);
        assertThat(pi4.out())
                .contains("pi4: stops at the boot firmware.", "start4.elf is not on the card")
                .contains("Next: Put start4.elf");
        Bootmend.Result every = bootmend.run("diagnose", card);
        assertThat(every.code()).isZero();
        assertThat(every.out()).contains("pi4 pi400 cm4 cm4s: stops at the boot firmware.");
    }

    @Test
    void theDocumentHasEveryLinkAndTheFirstCause() throws Exception {
        delete("bcm2711-rpi-4-b.dtb");

        Bootmend.Result result = bootmend.run("diagnose", "--json", "--board", "pi4", card);

        assertThat(result.code()).isEqualTo(ExitCode.BLOCKER);
        JsonNode board = new ObjectMapper().readTree(result.out()).at("/boards/0");
        assertThat(board.at("/board").asText()).isEqualTo("pi4");
        assertThat(board.at("/verdict").asText()).isEqualTo("stops");
        assertThat(board.at("/links").findValuesAsText("link"))
                .isEqualTo(List.of(
                        "partition",
                        "update",
                        "firmware",
                        "config",
                        "kernel",
                        "devicetree",
                        "overlays",
                        "initramfs",
                        "cmdline",
                        "root"));
        assertThat(board.at("/cause/link").asText()).isEqualTo("devicetree");
        assertThat(board.at("/cause/remedy").asText()).contains("bcm2711-rpi-4-b.dtb");
    }

    @Test
    void aTunedCardThatIsWholeIsToldToGoToStockNext() throws Exception {
        Path tuned;
        try (var cards = Files.list(folder.resolve("demo"))) {
            tuned = cards.filter(file -> file.getFileName().toString().startsWith("lab-card-03"))
                    .findFirst()
                    .orElseThrow();
        }

        Bootmend.Result result = bootmend.run("diagnose", "--board", "pi4", tuned);

        assertThat(result.code()).isZero();
        assertThat(result.out())
                .contains("its settings are above stock (arm_freq,", "reset is the next step")
                .contains("bootmend reset " + tuned);
    }

    @Test
    void severalCardsAreOneDocumentAndOneThatCannotBeReadIsInIt() throws Exception {
        Bootmend.Result result = bootmend.run("diagnose", "--json", card, folder.resolve("none.img"));

        assertThat(result.code()).isEqualTo(ExitCode.UNREADABLE);
        JsonNode cards = new ObjectMapper().readTree(result.out()).at("/cards");
        assertThat(cards).hasSize(2);
        assertThat(cards.at("/0/boards/0/verdict").asText()).isEqualTo("boots");
        assertThat(cards.at("/1/error/what").asText()).contains("no such file");
    }

    /** With mtools, as any computer deletes a file; the demo's boot partition begins at 4 MiB. */
    private void delete(String name) throws Exception {
        Process mdel;
        try {
            mdel = new ProcessBuilder("mdel", "-i", card + "@@4M", "::" + name)
                    .redirectErrorStream(true)
                    .start();
        } catch (IOException e) {
            assumeTrue(false, "mtools is missing here: skipped");
            return;
        }
        String said = new String(mdel.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(mdel.waitFor()).as(said).isZero();
    }
}
