package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every row of every table names where its facts come from, or says that no source is known. */
class EveryRowHasItsSourceTest {

    private static final Set<String> NONE =
            Set.of("memory", "practice", "none", "common practice, no source", "value from memory");
    private static final Path RESOURCES = Path.of("src/main/resources/bootmend");
    /** Tables of which each names its sources once, in its head. */
    private static final Path BY_HEAD = RESOURCES.resolve("boot");

    private static final Pattern HEAD = Pattern.compile("(?m)^# .*Source[^:\\n]*: (S\\d+(?:, S\\d+)*)");

    static List<Path> tables() throws IOException {
        try (Stream<Path> found = Files.walk(RESOURCES)) {
            return found.filter(path -> path.toString().endsWith(".csv"))
                    .filter(path -> !path.endsWith("sources.csv") && !path.startsWith(BY_HEAD))
                    .sorted()
                    .toList();
        }
    }

    static List<Path> tablesWithHead() throws IOException {
        try (Stream<Path> found = Files.list(BY_HEAD)) {
            return found.filter(path -> path.toString().endsWith(".csv"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("tablesWithHead")
    void everyHeadNamesKnownSources(Path path) throws IOException {
        Sources sources = TuningTables.load().sources();
        Matcher head = HEAD.matcher(Files.readString(path));
        assertThat(head.find()).isTrue();
        assertThat(head.group(1).split(", ", -1))
                .allSatisfy(each -> assertThat(sources.find(each)).as(each).isPresent());
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
