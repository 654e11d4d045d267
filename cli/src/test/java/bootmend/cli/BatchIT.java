package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.zip.GZIPOutputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many cards by whole commands on the packaged jar. */
class BatchIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;
    private Path cards;

    @BeforeEach
    void threeTunedCardsAndABrokenOne() throws IOException {
        bootmend = new Bootmend(folder);
        cards = Files.createDirectory(folder.resolve("cards"));
        Path first = TestCards.tuned(folder);
        for (String name : List.of("a.img", "c.img", "d.img")) {
            Files.copy(first, cards.resolve(name));
        }
        Files.write(cards.resolve("b.img"), new byte[5000]);
    }

    @Test
    void oneBrokenCardDoesNotStopTheRestAndASecondRunFindsNothingToDo() throws Exception {
        Path report = folder.resolve("report.csv");

        Bootmend.Result reset = bootmend.run("reset", "--yes", "--report", report, cards);

        assertThat(reset.code()).isEqualTo(ExitCode.UNREADABLE);
        assertThat(reset.out())
                .containsPattern("a\\.img +changed +LAB, 0000-BEEF, 2 tuning lines +2 lines +verified")
                .containsPattern("b\\.img +failed")
                .contains("4 cards: 3 changed, 1 failed.");
        assertThat(reset.err()).contains("b.img: it has no partition table").doesNotContain("\r");
        List<CSVRecord> rows = rows(report);
        assertThat(rows)
                .extracting(row -> Path.of(row.get("card")).getFileName().toString())
                .containsExactly("a.img", "b.img", "c.img", "d.img");
        assertThat(rows.get(0).get("verified")).isEqualTo("true");
        assertThat(rows.get(0).get("changed")).contains("config.txt line 2: arm_freq=2100 -> #arm_freq=2100");
        assertThat(rows.get(0).get("config_sha256")).hasSize(64);
        assertThat(Path.of(rows.get(3).get("undo_record"))).exists();
        assertThat(rows.get(1).get("error")).contains("no partition table");

        Files.delete(cards.resolve("b.img"));
        byte[] done = Files.readAllBytes(cards.resolve("a.img"));
        Bootmend.Result again = bootmend.run("reset", "--yes", cards);
        assertThat(again.code()).isZero();
        assertThat(again.out()).contains("3 cards: 3 nothing to do.");
        assertThat(Files.readAllBytes(cards.resolve("a.img"))).isEqualTo(done);
    }

    @Test
    void withoutAYesNothingIsChanged() throws Exception {
        byte[] before = Files.readAllBytes(cards.resolve("a.img"));

        assertThat(bootmend.run("reset", cards).code()).isEqualTo(ExitCode.REFUSED);
        Bootmend.Result dry =
                bootmend.run("reset", "--dry-run", "--json", cards.resolve("a.img"), cards.resolve("c.img"));

        assertThat(dry.code()).isZero();
        JsonNode document = new ObjectMapper().readTree(dry.out());
        assertThat(document.at("/cards")).hasSize(2);
        assertThat(document.at("/cards/1/lines/0/after").asText()).isEqualTo("#arm_freq=2100");
        assertThat(document.at("/totals/to change").asInt()).isEqualTo(2);
        assertThat(document.at("/exitCode").asInt(-1)).isZero();
        assertThat(Files.readAllBytes(cards.resolve("a.img"))).isEqualTo(before);
        assertThat(bootmend.home()).doesNotExist();
    }

    @Test
    void showSumsUpAFolderWithItsPackedImagesAndAPattern() throws Exception {
        try (var out = new GZIPOutputStream(Files.newOutputStream(cards.resolve("e.img.gz")))) {
            Files.copy(cards.resolve("a.img"), out);
        }
        Path page = folder.resolve("page.html");

        Bootmend.Result show = bootmend.run("show", "--report", page, cards);

        assertThat(show.out()).containsPattern("e\\.img\\.gz +read +LAB, 0000-BEEF, 2 tuning lines");
        Document html = Jsoup.parse(page.toFile(), "UTF-8");
        assertThat(html.select("tbody tr")).hasSize(5);
        assertThat(html.select("tbody tr").get(4).text()).contains("e.img.gz", "LAB");
        assertThat(html.select("script, link, img, [src], [href]")).isEmpty();

        Bootmend.Result refused = bootmend.run("reset", "--yes", cards.resolve("e.img.gz"));
        assertThat(refused.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(refused.err()).contains("gzip -dk e.img.gz");

        Bootmend.Result json = bootmend.run("show", "--json", cards.resolve("[ac].img"));
        assertThat(new ObjectMapper()
                        .readTree(json.out())
                        .at("/cards/1/partition/serial")
                        .asText())
                .isEqualTo("0000-BEEF");
        assertThat(bootmend.run("show", "--report", page, cards).code()).isEqualTo(ExitCode.REFUSED);
        assertThat(bootmend.run("show", "--report", "page.txt", cards).code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void whenToldToEndTheCardsInWorkAreFinishedAndTheRestIsNamed() throws Exception {
        manyCards();
        Path report = folder.resolve("report.json");

        // SIGTERM takes the same way through the process as SIGINT does.
        Process process = cut(Process::destroy, "--report", report.toString());

        JsonNode document = new ObjectMapper().readTree(report.toFile());
        int changed = document.at("/totals/changed").asInt();
        int left = document.at("/totals/not started").asInt();
        assertThat(document.at("/cards")).hasSize(403);
        assertThat(changed).isPositive();
        assertThat(left).isPositive();
        assertThat(changed + left).isEqualTo(403);
        assertThat(process.exitValue()).isEqualTo(ExitCode.REFUSED);
        assertThat(Files.readString(folder.resolve("all.txt"))).contains("Stopping:");
        assertThat(bootmend.run("cards").err())
                .contains("A batch did not come to its end: \"reset\" on 403 cards")
                .contains("Not begun (" + left + "): ")
                .contains("Done (" + changed + "): ")
                .doesNotContain("Cut in the middle");
        assertThat(bootmend.run("cards").err()).as("it is told once").isEmpty();
    }

    @Test
    void aBatchThatIsKilledIsToldAtTheNextStart() throws Exception {
        manyCards();

        cut(Process::destroyForcibly);

        Bootmend.Result next = bootmend.run("show", "--json", cards.resolve("a.img"));
        assertThat(next.err()).contains("\"reset\" on 403 cards").contains("Not begun (");
        assertThat(new ObjectMapper().readTree(next.out()).has("card")).isTrue();
    }

    private void manyCards() throws IOException {
        for (int i = 0; i < 400; i++) {
            Files.copy(cards.resolve("a.img"), cards.resolve("m" + i + ".img"));
        }
        Files.delete(cards.resolve("b.img"));
    }

    /** A reset of all cards that meets its end once the first is done. */
    private Process cut(Consumer<Process> end, String... options) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                System.getProperty("bootmend.jar"),
                "reset",
                "--yes",
                "--jobs",
                "1"));
        command.addAll(List.of(options));
        command.add(cards.toString());
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().put("BOOTMEND_HOME", bootmend.home().toString());
        Process process = builder.redirectErrorStream(true)
                .redirectOutput(folder.resolve("all.txt").toFile())
                .start();
        try {
            while (process.isAlive() && !Files.exists(bootmend.home().resolve("done"))) {
                Thread.sleep(5);
            }
            end.accept(process);
            assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        return process;
    }

    private static List<CSVRecord> rows(Path table) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.builder()
                .setReader(Files.newBufferedReader(table))
                .setFormat(format)
                .get()) {
            return parser.getRecords();
        }
    }
}
