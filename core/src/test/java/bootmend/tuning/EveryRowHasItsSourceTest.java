package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every row of every table names where its facts come from, or says that no source is known. */
class EveryRowHasItsSourceTest {

    private static final Set<String> NONE =
            Set.of("memory", "practice", "none", "common practice, no source", "value from memory");
    private static final Path RESOURCES = Path.of("src/main/resources/bootmend");
    private static final Pattern ID = Pattern.compile("\\bS\\d+\\b");
    /** The sources themselves, what this project says can be done about a finding, and what a search takes for likely. */
    private static final Set<String> OTHERS = Set.of("sources.csv", "fixes.csv", "rule-steps.csv", "search-ranges.csv");

    /** Tables whose every row comes from the same sources name them in their head instead. */
    private static boolean namesThemInItsHead(Path path) {
        return path.getParent().endsWith("boot");
    }

    static List<Path> wholeTables() throws IOException {
        try (Stream<Path> found = Files.list(RESOURCES.resolve("boot"))) {
            return found.filter(path -> path.toString().endsWith(".csv"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("wholeTables")
    void aTableOfOneOriginNamesKnownSourcesInItsHead(Path path) throws IOException {
        Sources sources = TuningTables.load().sources();
        String head = Files.readAllLines(path).stream()
                .filter(line -> line.startsWith("#") && line.contains("Source"))
                .collect(Collectors.joining(" "));
        List<String> named = ID.matcher(head).results().map(MatchResult::group).toList();
        assertThat(named)
                .isNotEmpty()
                .allSatisfy(id -> assertThat(sources.find(id)).as(id).isPresent());
    }

    static List<Path> tables() throws IOException {
        try (Stream<Path> found = Files.walk(RESOURCES)) {
            return found.filter(path -> path.toString().endsWith(".csv"))
                    .filter(path -> !OTHERS.contains(path.getFileName().toString()))
                    .filter(path -> !namesThemInItsHead(path))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("tables")
    void everyRowNamesAKnownSource(Path path) throws IOException {
        Sources sources = TuningTables.load().sources();
        try (InputStreamReader text = new InputStreamReader(Files.newInputStream(path), StandardCharsets.UTF_8)) {
            DataFile table = DataFile.read(path.getFileName().toString(), text);
            assertThat(table.rows()).isNotEmpty();
            for (DataRow row : table.rows()) {
                String cell = row.required("source");
                Stream<String> named = cell.contains(";") || NONE.contains(cell)
                        ? Stream.of(cell.split(";")).map(String::strip)
                        : Stream.of(cell.split(" "));
                assertThat(named)
                        .allSatisfy(each -> assertThat(NONE.contains(each)
                                        || sources.find(each).isPresent())
                                .as("%s line %d: %s", row.file(), row.line(), each)
                                .isTrue());
            }
        }
    }

    @Test
    void everySourceSaysWhereItIs() {
        assertThat(TuningTables.load().sources().all())
                .allSatisfy(source -> assertThat(source.place() + source.edition() + source.note())
                        .as(source.id())
                        .isNotEmpty());
    }
}
