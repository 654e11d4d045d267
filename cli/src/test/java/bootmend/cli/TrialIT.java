package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;

/** Trials by whole commands on the packaged jar, on a board of an invented robotics lab. */
class TrialIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;

    @BeforeEach
    void prepare() {
        bootmend = new Bootmend(folder);
    }

    @Test
    void addListAdviseAndChart() throws Exception {
        Path card = TestCards.tuned(folder);
        Bootmend.Result added = bootmend.run(
                "trial",
                "add",
                "--label",
                "lab-07",
                "--card",
                card,
                "--board",
                "pi4",
                "--set",
                "over_voltage=4",
                "--outcome",
                "holds",
                "--full-load",
                "--minutes",
                "50",
                "--mask",
                "0x0",
                "--peak",
                "71",
                "--score",
                "one core=312");
        assertThat(added.err()).isEmpty();
        assertThat(added.code()).isZero();
        assertThat(added.out())
                .contains("Kept: " + bootmend.home().resolve("trials"), "bootmend trial advise --label lab-07");

        JsonNode second = json(
                "trial",
                "add",
                "--label",
                "lab-07",
                "--set",
                "arm_freq=2150",
                "--set",
                "over_voltage=4",
                "--outcome",
                "locks-up",
                "--json");
        assertThat(second.at("/trial/board").asText()).isEqualTo("pi4");
        assertThat(second.at("/trial/counts").asText()).isEqualTo("failed");
        assertThat(second.at("/trial/minutes").isNull()).isTrue();
        assertThat(Path.of(second.at("/trial/file").asText())).exists();

        assertThat(bootmend.run("trial", "list").out())
                .containsPattern(
                        "lab-07 \\(pi4\\) +arm_boost=1 arm_freq=2100 over_voltage=4 +holds +known-good +50 +full +71 +0x0")
                .containsPattern("arm_freq=2150 over_voltage=4 +locks up +failed");
        assertThat(bootmend.run("trial", "advise", "--board", "lab-07").out())
                .contains(
                        "next       try arm_freq=2150 over_voltage=5", "Step 4 failed: one step more voltage",
                        "2100 MHz at voltage step 4, known-good", "Cautions");
        JsonNode advice = json("trial", "advise", "--board", "lab-07", "--json");
        assertThat(advice.at("/advice/action").asText()).isEqualTo("try");
        assertThat(advice.at("/advice/setting/arm_freq").asInt()).isEqualTo(2150);
        assertThat(advice.at("/frontier/1/failedStep").asInt()).isEqualTo(4);
        assertThat(advice.at("/frontier/1/heldStep").isNull()).isTrue();

        Path svg = folder.resolve("lab-07.svg");
        assertThat(json("trial", "chart", "--board", "lab-07", "--out", svg, "--json")
                        .at("/trials")
                        .asInt())
                .isEqualTo(2);
        Document drawing =
                DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(svg.toFile());
        assertThat(drawing.getDocumentElement().getTextContent())
                .contains(
                        "Trials of lab-07 (pi4)",
                        "failed: locks up",
                        "known-good: held 45 minutes or more",
                        "80 degC",
                        "85 degC",
                        "end of the published range");
        Bootmend.Result again = bootmend.run("trial", "chart", "--board", "lab-07", "--out", svg);
        assertThat(again.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(again.err()).contains("is there already and was left alone");
        Path png = folder.resolve("lab-07.png");
        assertThat(bootmend.run("trial", "chart", "--board", "lab-07", "--out", png)
                        .code())
                .isZero();
        BufferedImage image = ImageIO.read(png.toFile());
        assertThat(image.getWidth()).isEqualTo(2000);
    }

    @Test
    void importSumsUpALog() throws Exception {
        Path log = Files.writeString(
                folder.resolve("log.csv"),
                "Time,Clock MHz,Volts,Temperature,Mask\n"
                        + "0,2000,0.95,60,0x0\n60,2000,0.95,81,0x0\n120,1500,0.93,82,0x80008\nbad row\n");

        assertThat(bootmend.run("trial", "import", "--clock", "2000", log).out())
                .contains(
                        "2.0 min, no gap",
                        "80 degC        reached after 1.0 min",
                        "soft temperature limit active now",
                        "3 good, 1 left out",
                        "line 5: ");
        JsonNode sum = json("trial", "import", "--json", log);
        assertThat(sum.at("/peakDegC").asDouble()).isEqualTo(82);
        assertThat(sum.at("/setClockGiven").asBoolean(true)).isFalse();
        assertThat(sum.at("/throttleMask").asText()).isEqualTo("0x80008");
    }

    @Test
    void aWrongFileInTheStoreIsNamedWithItsLineAndEndsInAnError() throws Exception {
        Path trials = Files.createDirectories(bootmend.home().resolve("trials"));
        Files.writeString(trials.resolve("mine.yaml"), "schema: 1\nboard: pi4\nlabel: lab-07\nwhen: yesterday\n");

        Bootmend.Result list = bootmend.run("trial", "list");

        assertThat(list.code()).isEqualTo(ExitCode.UNREADABLE);
        assertThat(list.err())
                .contains("mine.yaml, line 4: when: a time is written like 2026-11-24T15:30:00Z")
                .doesNotContain("Exception");
    }

    @Test
    void theLoggerComesOnStandardOutputOrInAFile() throws Exception {
        assertThat(bootmend.run("trial", "logger").out()).startsWith("#!/bin/sh");
        Path script = folder.resolve("board-log.sh");
        assertThat(bootmend.run("trial", "logger", script).code()).isZero();
        assertThat(script).content().startsWith("#!/bin/sh");
    }

    @Test
    void aCommandLoadsNoLibraryThatItDoesNotNeed() throws Exception {
        bootmend.run("trial", "add", "--label", "lab-07", "--board", "pi4", "--outcome", "boots");

        assertThat(bootmend.loadedClasses("trial", "list"))
                .anyMatch(name -> name.startsWith("bootmend.trial."))
                .noneMatch(name -> name.startsWith("org.jfree.") || name.startsWith("java.awt."));
        assertThat(bootmend.loadedClasses("show", TestCards.tuned(folder)))
                .noneMatch(name -> name.startsWith("org.jfree.") || name.startsWith("org.yaml."))
                .noneMatch(name -> name.startsWith("oshi.") || name.startsWith("com.sun.jna."))
                .noneMatch(name -> name.startsWith("com.fasterxml.") || name.startsWith("com.samskivert."))
                .noneMatch(name -> name.startsWith("java.security.MessageDigest"));
        assertThat(bootmend.loadedClasses("trial", "chart", "--board", "lab-07", "--out", folder.resolve("a.png")))
                .anyMatch(name -> name.startsWith("org.jfree."));
    }

    private JsonNode json(Object... command) throws Exception {
        Bootmend.Result result = bootmend.run(command);
        assertThat(result.err()).isEmpty();
        return new ObjectMapper().readTree(result.out());
    }
}
