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

/** Single settings, comparisons and config files on their own, by whole commands on the packaged jar. */
class SetIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;
    private Path cart;
    private Path mast;

    @BeforeEach
    void prepare() throws Exception {
        bootmend = new Bootmend(folder);
        cart = card("cart.img", "[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n");
        mast = card("mast.img", "arm_freq=1600\nhdmi_group=1\n");
    }

    private Path card(String name, String config) throws Exception {
        return TestCards.with(folder, name, config.getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void oneSettingOnManyCardsAndBack() throws Exception {
        byte[] before = Files.readAllBytes(cart);
        Bootmend.Result set = bootmend.run("set", "--yes", cart, mast, "arm_freq=1500", "--board", "pi4");
        assertThat(set.code()).as(set.err()).isZero();
        assertThat(set.out()).contains("2 cards: 2 changed");
        assertThat(bootmend.run("show", "--board", "pi4", cart).out()).contains("1500 MHz");

        Bootmend.Result line = bootmend.run("set", "--yes", cart, mast, "--comment-out", "3", "--board", "pi4");
        assertThat(line.code()).isEqualTo(ExitCode.USAGE);
        assertThat(line.err()).contains("may be another line on another card");

        assertThat(bootmend.run("undo", "--yes", cart).code()).isZero();
        assertThat(Files.readAllBytes(cart)).isEqualTo(before);
    }

    @Test
    void findingsComeBeforeTheQuestion() throws Exception {
        Bootmend.Result asked = bootmend.run("set", cart, "over_voltage=3", "--board", "pi4");
        assertThat(asked.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(asked.out()).contains("after   over_voltage=3", "What a check finds in it:");
        assertThat(asked.err()).contains("there is no terminal to ask on");

        Bootmend.Result blocked = bootmend.run("set", "--yes", cart, "arm_freq=9000", "--board", "pi4");
        assertThat(blocked.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(blocked.err()).contains("--despite-blockers");

        JsonNode planned = new ObjectMapper()
                .readTree(bootmend.run("set", "--json", "--dry-run", cart, "over_voltage=3", "--board", "pi4")
                        .out());
        assertThat(planned.at("/brings/0/severity").asText()).isEqualTo("note");
        assertThat(planned.at("/lines/0/after").asText()).isEqualTo("over_voltage=3");
    }

    @Test
    void oneCardsTuningIsComparedAndGivenToAnother() throws Exception {
        JsonNode compared = new ObjectMapper()
                .readTree(bootmend.run("compare", "--json", "--board", "pi4", cart, mast)
                        .out());
        assertThat(compared.at("/boards/0/tuning").findValuesAsText("key")).containsExactly("arm_freq", "over_voltage");
        assertThat(compared.at("/boards/0/other/0/key").asText()).isEqualTo("hdmi_group");

        Bootmend.Result like = bootmend.run("reset", "--yes", mast, "--like", cart, "--board", "pi4");
        assertThat(like.code()).as(like.err()).isZero();
        assertThat(bootmend.run("compare", cart, mast, "--board", "pi4").out()).doesNotContain("arm_freq");
        assertThat(bootmend.run("reset", "--yes", mast, "--like", cart).err())
                .contains("cart.img: nothing on the card tells which board it is for", "--board");
    }

    @Test
    void aConfigFileOnItsOwnIsGivenChangedOrChangedInPlace() throws Exception {
        String text = "# mine\r\narm_freq=1600\r\ncaf\u00e9=1";
        Path file = folder.resolve("lab.txt");
        Files.write(file, text.getBytes(StandardCharsets.ISO_8859_1));

        Bootmend.Result given = bootmend.run("set", file, "arm_freq=1500", "--board", "pi4");
        assertThat(given.code()).as(given.err()).isZero();
        assertThat(given.out()).isEqualTo("# mine\r\narm_freq=1500\r\ncaf\ufffd=1");
        assertThat(given.err()).contains("after   arm_freq=1500");
        assertThat(Files.readAllBytes(file)).isEqualTo(text.getBytes(StandardCharsets.ISO_8859_1));

        Bootmend.Result changed = bootmend.run("reset", "--in-file", "--yes", file);
        assertThat(changed.code()).as(changed.err()).isZero();
        assertThat(changed.out()).contains("was replaced in one step", "No undo record is kept");
        assertThat(Files.readAllBytes(file))
                .isEqualTo(text.replace("arm_freq", "#arm_freq").getBytes(StandardCharsets.ISO_8859_1));
        assertThat(bootmend.run("compare", file, cart, "--board", "pi4").out()).contains("arm_freq");
        assertThat(bootmend.run("reset", file, mast).code()).isEqualTo(ExitCode.USAGE);
    }
}
