package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Includes and sections as the board follows them. Sources: "File format", config_txt/what_is_config_txt.adoc, commit
 * 57ad5821; "Conditional filters", config_txt/conditional.adoc, commits 23cc7a36 and 3e67d54c. The board is pi4;
 * whether it is started with its try-once flag is not known.
 */
class ConfigReaderTest {

    private final Map<String, String> files = new HashMap<>();

    @Test
    void anIncludedFileStandsInItsLinesPlace() {
        files.put("robots.txt", "b=2\n");

        assertThat(read("a=1\ninclude robots.txt\nc=3\n"))
                .containsExactly(
                        "config.txt:1 a=1 TRUE",
                        "config.txt:2 include robots.txt TRUE",
                        "robots.txt:1 b=2 TRUE",
                        "config.txt:3 c=3 TRUE");
    }

    @Test
    void filtersInForceHoldInsideAnIncludedFile() {
        files.put("robots.txt", "b=2\n");

        assertThat(read("[tryboot]\ninclude robots.txt\n")).contains("robots.txt:1 b=2 UNKNOWN");
    }

    @Test
    void filtersThatAnIncludedFileOpensHoldAfterIt() {
        files.put("robots.txt", "[pi3]\nb=2\n");

        assertThat(read("include robots.txt\nc=3\n[all]\nd=4\n"))
                .contains("robots.txt:2 b=2 FALSE", "config.txt:2 c=3 FALSE", "config.txt:4 d=4 TRUE");
    }

    @Test
    void anIncludeThatDoesNotCountIsNotRead() {
        files.put("robots.txt", "[all]\nb=2\n");

        assertThat(read("[pi3]\ninclude robots.txt\nc=3\n"))
                .containsExactly("config.txt:2 include robots.txt FALSE", "config.txt:3 c=3 FALSE");
    }

    @Test
    void inAFileThatMayBeIncludedNothingIsSure() {
        files.put("robots.txt", "[all]\nb=2\n[pi3]\nx=1\n[all]\n");

        assertThat(read("[tryboot]\ninclude robots.txt\n[all]\nc=3\n"))
                .contains("robots.txt:2 b=2 UNKNOWN", "robots.txt:4 x=1 FALSE", "config.txt:4 c=3 TRUE");
    }

    @Test
    void afterAFileThatMayBeIncludedItsSectionsMayHold() {
        files.put("robots.txt", "[all]\n");
        files.put("plain.txt", "b=2\n");

        assertThat(read("[tryboot]\ninclude robots.txt\nc=3\n[pi3]\nd=4\n[pi4]\ne=5\n[all]\nf=6\n"))
                .contains(
                        "config.txt:3 c=3 UNKNOWN",
                        "config.txt:5 d=4 FALSE",
                        "config.txt:7 e=5 UNKNOWN",
                        "config.txt:9 f=6 TRUE");
    }

    @Test
    void aMissingFileIsReportedAndReadingGoesOn() {
        ConfigReading reading = reading("include robots.txt\nc=3\n");

        assertThat(reading.lines()).hasSize(2);
        assertThat(reading.problems())
                .containsExactly(new IncludeProblem(IncludeProblem.Kind.MISSING, "config.txt", 1, "robots.txt"));
        assertThat(reading.problems().get(0).sentence())
                .isEqualTo("Line 1 of config.txt names robots.txt, which is"
                        + " not on the boot partition; put the file there or take the line out.");
    }

    @Test
    void aFileThatIncludesItselfIsReadOnce() {
        files.put("Robots.txt", "include /ROBOTS.TXT\nb=2\n");

        ConfigReading reading = reading("include Robots.txt\nc=3\n");

        assertThat(reading.problems())
                .containsExactly(new IncludeProblem(IncludeProblem.Kind.LOOP, "Robots.txt", 1, "/ROBOTS.TXT"));
        assertThat(reading.lines())
                .extracting(line -> line.line().text())
                .containsExactly("include Robots.txt", "include /ROBOTS.TXT", "b=2", "c=3");
    }

    @Test
    void twoFilesThatIncludeEachOther() {
        files.put("a.txt", "include b.txt\n");
        files.put("b.txt", "include config.txt\ninclude a.txt\n");

        assertThat(reading("include a.txt\n").problems())
                .containsExactly(
                        new IncludeProblem(IncludeProblem.Kind.LOOP, "b.txt", 1, "config.txt"),
                        new IncludeProblem(IncludeProblem.Kind.LOOP, "b.txt", 2, "a.txt"));
    }

    @Test
    void aFileMayBeIncludedTwiceInARow() {
        files.put("robots.txt", "b=2\n");

        assertThat(reading("include robots.txt\ninclude robots.txt\n").problems())
                .isEmpty();
    }

    @Test
    void aLongRowOfIncludesEnds() {
        for (int i = 1; i <= 20; i++) {
            files.put(i + ".txt", "include " + (i + 1) + ".txt\n");
        }

        assertThat(reading("include 1.txt\n").problems())
                .containsExactly(new IncludeProblem(IncludeProblem.Kind.TOO_DEEP, "8.txt", 1, "9.txt"));
    }

    @Test
    void includesThatMultiplyEnd() {
        for (int i = 1; i <= 8; i++) {
            files.put(i + ".txt", ("include " + (i + 1) + ".txt\n").repeat(40));
        }

        ConfigReading reading = reading("include 1.txt\n");

        assertThat(reading.problems()).extracting(IncludeProblem::kind).contains(IncludeProblem.Kind.TOO_MUCH);
        assertThat(reading.lines()).hasSizeLessThan(ConfigReader.MAX_INCLUDES * 41);
    }

    @Test
    void includedBytesAreBounded() {
        files.put("big.txt", "#".repeat(ConfigReader.MAX_INCLUDED_BYTES));
        files.put("small.txt", "b=2\n");

        assertThat(reading("include big.txt\n").problems()).isEmpty();
        assertThat(reading("include big.txt\ninclude small.txt\n").problems())
                .containsExactly(new IncludeProblem(IncludeProblem.Kind.TOO_MUCH, "config.txt", 2, "small.txt"));
    }

    @Test
    void linesUnderNoneAreMarked() {
        ConfigReading reading = reading("[none]\na=1\n[all]\nb=2\n[pi3]\nc=3\n");

        assertThat(reading.lines()).extracting(ReachedLine::none).containsExactly(true, false, false);
    }

    private List<String> read(String config) {
        return reading(config).lines().stream()
                .map(line -> line.file() + ":" + line.line().number() + " "
                        + line.line().text() + " " + line.condition().truth())
                .toList();
    }

    private ConfigReading reading(String config) {
        return ConfigReader.read(
                "config.txt",
                ConfigDocument.parse(bytes(config)),
                name -> Optional.ofNullable(files.get(name)).map(ConfigReaderTest::bytes),
                new FilterParser(Set.of("pi3", "pi4")),
                ConfigReaderTest::onPi4);
    }

    private static Condition onPi4(Filter filter) {
        return filter instanceof Filter.Model model
                ? Condition.of(model.token().equals("pi4"))
                : Condition.dependsOn("the try-once flag");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
