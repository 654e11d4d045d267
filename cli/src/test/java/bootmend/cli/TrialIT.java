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
                        "next       try arm_freq=",
                        "minutes under full load",
                        "if it fails while it runs: ",
                        "2100 MHz at voltage step 4, known-good",
                        "Cautions");
        JsonNode advice = json("trial", "advise", "--board", "lab-07", "--json");
        assertThat(advice.at("/advice/action").asText()).isEqualTo("try");
        assertThat(advice.at("/advice/setting/voltageMode").asText()).isEqualTo("fixed");
        assertThat(advice.at("/advice/chanceToHold").asDouble()).isBetween(0.01, 0.99);
        assertThat(advice.at("/frontiers/0/key").asText()).isEqualTo("over_voltage");
        assertThat(advice.at("/frontiers/0/points/1/failed").asInt()).isEqualTo(4);
        assertThat(advice.at("/frontiers/0/points/1/held").isNull()).isTrue();

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
    void whatRanIsWhatTheStagedFileSays() throws Exception {
        Path card = TestCards.tuned(folder);
        assertThat(bootmend.run("trial", "stage", card, "--board", "pi4", "--set", "arm_freq=1850", "--yes")
                        .code())
                .isZero();
        JsonNode once = json(
                "trial",
                "add",
                "--label",
                "lab-07",
                "--board",
                "pi4",
                "--card",
                card,
                "--tryboot",
                "--outcome",
                "boots",
                "--json");
        assertThat(once.at("/trial/settings/arm_freq").asInt()).isEqualTo(1850);
        assertThat(once.at("/trial/settingsFrom").asText()).matches("tryboot.txt sha256 [0-9a-f]{64}");
        JsonNode usual = json("trial", "add", "--label", "lab-07", "--card", card, "--outcome", "boots", "--json");
        assertThat(usual.at("/trial/settings/arm_freq").asInt()).isEqualTo(2100);
        assertThat(usual.at("/trial/settingsFrom").asText()).startsWith("config.txt sha256 ");
        assertThat(usual.at("/notes/0").asText()).contains("Settings are staged on this card too");
    }

    @Test
    void aLogThatContradictsIsRefusedUnlessItIsKeptUndecided() throws Exception {
        StringBuilder rows = new StringBuilder("time,clock_mhz,temperature,mask\n");
        for (int i = 0; i < 60; i++) {
            rows.append(i * 60).append(",1500,60,0x0\n");
        }
        Path log = Files.writeString(folder.resolve("log.csv"), rows);
        Object[] add = {
            "trial",
            "add",
            "--label",
            "lab-07",
            "--board",
            "pi4",
            "--set",
            "arm_freq=1900",
            "--set",
            "over_voltage=2",
            "--outcome",
            "holds",
            "--full-load",
            "--from",
            log
        };
        Bootmend.Result refused = bootmend.run(add);
        assertThat(refused.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(refused.err())
                .contains("the log never reaches 1900 MHz: its highest clock is 1500 MHz", "With --note it is kept");

        Object[] noted = java.util.Arrays.copyOf(add, add.length + 3);
        noted[add.length] = "--note";
        noted[add.length + 1] = "the wrong log, I think";
        noted[add.length + 2] = "--json";
        JsonNode kept = json(noted);
        assertThat(kept.at("/trial/counts").asText()).isEqualTo("undecided");
        assertThat(kept.at("/trial/notes").asText()).isEqualTo("the wrong log, I think");
        assertThat(kept.at("/trial/contradictions/0").asText()).contains("never reaches 1900 MHz");
    }

    @Test
    void aTrialIsCorrectedDeletedAndPutBack() throws Exception {
        String id = json(
                        "trial",
                        "add",
                        "--label",
                        "lab-07",
                        "--board",
                        "pi4",
                        "--set",
                        "arm_freq=1900",
                        "--outcome",
                        "holds",
                        "--full-load",
                        "--minutes",
                        "50",
                        "--mask",
                        "0",
                        "--json")
                .at("/trial/id")
                .asText();
        assertThat(bootmend.run("trial", "edit", id, "--minutes", "20", "--set", "over_voltage=3")
                        .out())
                .contains("arm_freq=1900", "over_voltage=3", "held");
        assertThat(json("trial", "list", "--counts", "known-good", "--json").at("/trials"))
                .isEmpty();
        assertThat(json("trial", "list", "--set", "over_voltage=3", "--json").at("/trials"))
                .hasSize(1);
        assertThat(bootmend.run("trial", "delete", id).out()).contains("To undo it: bootmend trial restore " + id);
        assertThat(bootmend.run("trial", "list").out()).contains("No trial is kept here yet");
        assertThat(json("trial", "list", "--deleted", "--json")
                        .at("/trials/0/id")
                        .asText())
                .isEqualTo(id);
        assertThat(bootmend.run("trial", "restore", id).code()).isZero();
        assertThat(json("trial", "list", "--newest", "1", "--json")
                        .at("/trials/0/settings/over_voltage")
                        .asInt())
                .isEqualTo(3);
        Bootmend.Result none = bootmend.run("trial", "delete", "../" + id);
        assertThat(none.code()).isEqualTo(ExitCode.USAGE);
        assertThat(none.err()).doesNotContain("Exception");
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
                .noneMatch(name -> name.startsWith("bootmend.chart.") || name.startsWith("java.awt."));
        assertThat(bootmend.loadedClasses("show", TestCards.tuned(folder)))
                .noneMatch(name -> name.startsWith("bootmend.chart.") || name.startsWith("org.yaml."))
                .noneMatch(name -> name.startsWith("oshi.") || name.startsWith("com.sun.jna."))
                .noneMatch(name -> name.startsWith("com.fasterxml.") || name.startsWith("com.samskivert."))
                .noneMatch(name -> name.startsWith("java.security.MessageDigest"));
        assertThat(bootmend.loadedClasses("trial", "chart", "--board", "lab-07", "--out", folder.resolve("a.png")))
                .anyMatch(name -> name.startsWith("java.awt."));
        assertThat(bootmend.loadedClasses("trial", "chart", "--board", "lab-07", "--out", folder.resolve("a.svg")))
                .anyMatch(name -> name.startsWith("bootmend.chart."))
                .noneMatch(name -> name.startsWith("java.awt."));
    }

    private JsonNode json(Object... command) throws Exception {
        Bootmend.Result result = bootmend.run(command);
        assertThat(result.err()).isEmpty();
        return new ObjectMapper().readTree(result.out());
    }
}
