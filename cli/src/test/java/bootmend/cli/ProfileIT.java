package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Profiles and staged trials by whole commands on the packaged jar. */
class ProfileIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;
    private Path cart;

    @BeforeEach
    void prepare() throws Exception {
        bootmend = new Bootmend(folder);
        cart = TestCards.with(
                folder,
                "cart.img",
                "[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n".getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void aProfileIsProvenByATrialAndPutOnAnotherCard() throws Exception {
        Bootmend.Result trial = bootmend.run(
                "trial",
                "add",
                "--label",
                "cart-3",
                "--board",
                "pi4",
                "--card",
                cart,
                "--outcome",
                "holds",
                "--minutes",
                "52",
                "--full-load",
                "--mask",
                "0x0",
                "--json");
        assertThat(trial.code()).as(trial.err()).isZero();
        String id = new ObjectMapper().readTree(trial.out()).findValue("id").asText();

        Bootmend.Result saved = bootmend.run("profile", "save", "cart-3", cart, "--board", "pi4", "--trial", id);
        assertThat(saved.out()).as(saved.err()).contains("cart-3, known-good", "held 52 minutes under full load");

        Path other = TestCards.tuned(folder);
        Bootmend.Result put = bootmend.run("reset", other, "--to", "cart-3", "--yes");
        assertThat(put.code()).as(put.err()).isZero();
        assertThat(put.out()).contains("Done: profile cart-3.").doesNotContain("unproven");
        Bootmend.Result compared = bootmend.run("profile", "compare", "cart-3", other, "--json");
        assertThat(new ObjectMapper().readTree(compared.out()).findValuesAsText("key"))
                .containsExactly("arm_boost");
    }

    @Test
    void aProfileTravelsAsAFile() throws Exception {
        bootmend.run("profile", "save", "cart-3", cart, "--board", "pi4");
        Path file = folder.resolve("carried.yaml");
        assertThat(bootmend.run("profile", "export", "cart-3", file).code()).isZero();
        assertThat(bootmend.run("profile", "delete", "cart-3", "--yes").code()).isZero();
        assertThat(bootmend.run("profile", "import", file).out()).contains("cart-3, unproven");
        Bootmend.Result again = bootmend.run("profile", "import", file);
        assertThat(again.code()).isEqualTo(ExitCode.REFUSED);
    }

    @Test
    void namesAndFilesThatAreNoProfilesAreErrors() throws Exception {
        assertThat(bootmend.run("profile", "show", "../../etc/passwd").code()).isEqualTo(ExitCode.USAGE);
        Path bad = Files.writeString(folder.resolve("bad.yaml"), "schema: 1\nname: x\n");
        Bootmend.Result result = bootmend.run("profile", "import", bad);
        assertThat(result.code()).isEqualTo(ExitCode.UNREADABLE);
        assertThat(result.err()).contains("bad.yaml").contains("board is missing");
    }

    @Test
    void aStagedTrialIsAdoptedAndTakenBack() throws Exception {
        byte[] before = Files.readAllBytes(cart);
        Bootmend.Result staged =
                bootmend.run("trial", "stage", cart, "--board", "pi4", "--set", "arm_freq=1850", "--yes");
        assertThat(staged.code()).as(staged.err()).isZero();
        assertThat(staged.out()).contains("after   arm_freq=1850", "sudo reboot '0 tryboot'");
        assertThat(bootmend.run("show", cart).out()).contains("tryboot.txt is staged");

        assertThat(bootmend.run("trial", "adopt", cart, "--yes").code()).isZero();
        JsonNode shown = new ObjectMapper()
                .readTree(bootmend.run("show", "--json", "--board", "pi4", cart).out());
        assertThat(shown.at("/effective/0/value").asText()).isEqualTo("1850");

        assertThat(bootmend.run("undo", "--yes", cart).code()).isZero();
        assertThat(bootmend.run("undo", "--yes", cart).code()).isZero();
        assertThat(Files.readAllBytes(cart)).isEqualTo(before);
    }
}
