package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.fixtures.SampleBootFiles;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code bootmend check} by whole commands on the packaged jar. */
class CheckIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;

    @BeforeEach
    void prepare() {
        bootmend = new Bootmend(folder);
    }

    @Test
    void theDemoCardsGetTheVerdictsThatTheirStoriesTell() throws Exception {
        List<DemoCard> demo = DemoCards.writeAll(folder.resolve("cards"));
        List<Object> command = new ArrayList<>(List.of("check", "--json", "--for", "ship"));
        demo.forEach(card -> command.add(folder.resolve("cards").resolve(card.fileName())));

        Bootmend.Result result = bootmend.run(command.toArray());

        JsonNode document = new ObjectMapper().readTree(result.out());
        assertThat(result.err()).isEmpty();
        assertThat(result.code()).isEqualTo(ExitCode.BLOCKER);
        assertThat(document.at("/exitCode").asInt()).isEqualTo(ExitCode.BLOCKER);
        assertThat(document.at("/cards")).hasSize(demo.size());
        for (int i = 0; i < demo.size(); i++) {
            JsonNode card = document.at("/cards/" + i);
            assertThat(card.at("/ready").asBoolean()).isEqualTo(!demo.get(i).tuned());
            if (!demo.get(i).tuned()) {
                assertThat(card.at("/findings")).isEmpty();
            } else {
                assertThat(card.at("/findings").findValuesAsText("rule"))
                        .contains("tuning-line-active", "clock-above-stock-hand-voltage");
            }
        }
        assertThat(document.at("/cards/0/findings").findValuesAsText("rule")).contains("warranty-bit");
        assertThat(document.at("/cards/3/findings").findValuesAsText("rule"))
                .contains("key-ignored")
                .doesNotContain("overlay-missing", "firmware-missing");
    }

    @Test
    void aTunedCardIsNotReadyAndTheTextSaysWhy() throws Exception {
        Path card = stock("tuned.img", "arm_freq=2000\ntemp_limit=90\n", Map.of());

        Bootmend.Result result = bootmend.run("check", "--for", "ship", "--board", "pi4", card);

        assertThat(result.code()).isEqualTo(ExitCode.BLOCKER);
        assertThat(result.err()).isEmpty();
        assertThat(result.out())
                .containsSubsequence(
                        "boards          pi4",
                        "blocker: tuning-line-active",
                        "config.txt line 1: arm_freq=2000 is active.",
                        "means",
                        "do ",
                        "source  \"Overclocking options\"",
                        "warning: clock-above-stock-scaled-voltage",
                        "+33 % (stock 1500 MHz)",
                        "warning: temp-limit-above-85",
                        "Not ready to ship: 2 blockers, 2 warnings, 1 note.");
        assertThat(result.out().strip().lines().reduce((a, b) -> b))
                .hasValueSatisfying(last -> assertThat(last).startsWith("Not ready to ship"));
    }

    @Test
    void whatACrashLeavesIsFoundOnTheCardItself() throws Exception {
        Path card = stock(
                "crashed.img",
                "enable_uart=1\n",
                Map.of(
                        "kernel8.img",
                        new byte[40_000],
                        "cmdline.txt",
                        new byte[0],
                        "recovery.bin",
                        new byte[10],
                        "pieeprom.upd",
                        new byte[10]));

        Bootmend.Result result = bootmend.run("check", "--for", "stability-run", "--board", "pi4", "--json", card);

        assertThat(new ObjectMapper()
                        .readTree(result.out())
                        .at("/cards/0/findings")
                        .findValuesAsText("rule"))
                .containsExactlyInAnyOrder(
                        "kernel-damaged", "cmdline-damaged", "update-waiting", "practice-stability-run");
        assertThat(result.code()).isEqualTo(ExitCode.BLOCKER);
    }

    @Test
    void oneCardThatFailsDoesNotStopTheRestAndTheWorstCodeCounts() throws Exception {
        Path ready = stock("ready.img", "enable_uart=1\n", Map.of());
        Path slip = folder.resolve("slip.html");
        Path table = folder.resolve("table.csv");

        Bootmend.Result result = bootmend.run(
                "check",
                "--for",
                "firmware-update",
                "--html",
                slip,
                "--csv",
                table,
                folder.resolve("nowhere.img"),
                ready);

        assertThat(result.code()).isEqualTo(ExitCode.UNREADABLE);
        assertThat(result.err()).contains("nowhere.img: there is no such file").doesNotContain("Exception");
        assertThat(result.out())
                .contains("Ready for a firmware update, as far as the card itself shows: 0 blockers")
                .contains("note: practice-firmware-update")
                .contains("power must not fail");
        assertThat(Jsoup.parse(slip.toFile(), "UTF-8").select("article h1")).hasSize(2);
        assertThat(Files.readString(table)).contains(",error,").contains(",note,practice-firmware-update,");
        byte[] before = Files.readAllBytes(slip);
        Bootmend.Result again = bootmend.run("check", "--for", "ship", "--html", slip, ready);
        assertThat(again.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(again.err()).contains("is there already and was left alone");
        assertThat(Files.readAllBytes(slip)).isEqualTo(before);
    }

    @Test
    void theTableGoesToStandardOutput() throws Exception {
        Bootmend.Result result =
                bootmend.run("check", "--for", "ship", "--csv", "-", stock("ready.img", "enable_uart=1\n", Map.of()));
        assertThat(result.code()).isZero();
        assertThat(result.out().lines()).hasSize(2).first().asString().startsWith("card,label,serial,");
    }

    @Test
    void aCardIsOnlyRead() throws Exception {
        Path card = TestCards.tuned(folder);
        byte[] before = Files.readAllBytes(card);
        assertThat(bootmend.run("check", "--for", "ship", card).out()).contains("boots-no-board");
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
        assertThat(bootmend.home()).doesNotExist();
    }

    @Test
    void aCardWithoutConfigFileIsCheckedAllTheSame() throws Exception {
        Bootmend.Result result = bootmend.run("check", "--for", "ship", TestCards.withoutConfig(folder));
        assertThat(result.code()).isEqualTo(ExitCode.BLOCKER);
        assertThat(result.out()).contains("blocker: config-missing", "config file     none that can be read");
    }

    @Test
    void wrongUsage() throws Exception {
        Path card = TestCards.tuned(folder);
        assertThat(bootmend.run("check", card).code()).isEqualTo(ExitCode.USAGE);
        assertThat(bootmend.run("check", "--for", "fun", card).err()).contains("ship, firmware-update, stability-run");
        Bootmend.Result board = bootmend.run("check", "--for", "ship", "--board", "pi9", card);
        assertThat(board.code()).isEqualTo(ExitCode.USAGE);
        assertThat(board.err()).contains("bootmend knows no board pi9").contains("pi0, pi0w");
    }

    /** A small card that boots every board, at stock but for the config file and what else is given. */
    private Path stock(String name, String config, Map<String, byte[]> others) throws Exception {
        Map<String, byte[]> files = new HashMap<>(SampleBootFiles.bootRoot(8_192, 16_384));
        files.put("config.txt", config.getBytes(StandardCharsets.UTF_8));
        // The card is one volume; its system comes over the network.
        files.put("cmdline.txt", "root=/dev/nfs ip=dhcp rw\n".getBytes(StandardCharsets.UTF_8));
        files.putAll(others);
        return TestCards.withFiles(folder, name, files);
    }
}
