package bootmend;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Core's texts name no command and no option, for not every front end has them; what a user can do next is a
 * {@link NextStep}.
 */
class NoCommandInCoreTest {

    private static final Path SOURCES = Path.of("src/main/java");
    private static final Path RESOURCES = Path.of("src/main/resources/bootmend");

    /** Comments, text blocks, strings and characters of Java, whichever begins first. */
    private static final Pattern TOKEN = Pattern.compile(
            "//[^\\n]*"
                    + "|/\\*.*?\\*/"
                    + "|\"{3}(?:\\\\.|.)*?\"{3}"
                    + "|\"(?:\\\\.|[^\"\\\\])*\""
                    + "|'(?:\\\\.|[^'\\\\])+'",
            Pattern.DOTALL);

    /** A command after the program's name; other words after it are prose, as in "bootmend knows no board". */
    private static final Pattern COMMAND = Pattern.compile(
            "\\bbootmend (?:(?:show|check|sheet|stock|reset|undo|repair|history|recover|explain|cards|station"
                    + "|demo|eject|help)\\b|(?:board|profile|trial) (?!log\\b)[a-z]+)");

    private static final Pattern QUOTED_COMMAND = Pattern.compile("`");
    private static final Pattern OPTION = Pattern.compile("(?<![\\w-])--[a-z]|(?<!\\w)-D[a-z]");
    private static final Pattern WHOLE_OPTION = Pattern.compile("--?[a-z][a-z-]*");

    /** Where the system's own programs are run, a text that is an option and nothing else is meant for one of them. */
    private static final String RUNS_PROGRAMS = "bootmend/device/";

    @Test
    void noTextInTheSourcesNamesACommandOrAnOption() throws IOException {
        List<String> found = new ArrayList<>();
        int texts = 0;
        for (Path source : files(SOURCES)) {
            String path = SOURCES.relativize(source).toString().replace('\\', '/');
            for (String text : literals(Files.readString(source))) {
                texts++;
                boolean argument = path.startsWith(RUNS_PROGRAMS)
                        && WHOLE_OPTION.matcher(text).matches();
                if (!argument && namesCommand(text)) {
                    found.add(path + ": " + text);
                }
            }
        }
        assertThat(texts).as("texts looked at").isGreaterThan(1000);
        assertThat(found).isEmpty();
    }

    @Test
    void noTextInTheDataFilesDoes() throws IOException {
        List<String> found = new ArrayList<>();
        int lines = 0;
        for (Path file : files(RESOURCES)) {
            String name = file.getFileName().toString();
            if (name.endsWith(".csv") || name.endsWith(".sh") || name.endsWith(".html")) {
                for (String line : Files.readAllLines(file)) {
                    lines++;
                    // Scripts run commands, and style sheets have names with hyphens in front: of those only ours
                    // count.
                    if (name.endsWith(".csv")
                            ? namesCommand(line)
                            : COMMAND.matcher(line).find()) {
                        found.add(name + ": " + line);
                    }
                }
            }
        }
        assertThat(lines).as("lines looked at").isGreaterThan(300);
        assertThat(found).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "f(\"Run `x` first.\")",
                "f(\"Run bootmend recover.\")",
                "f(\"see /* this\", \"With --in-place it is.\")",
                "f('\"', \"--in-place\" + x) // \"",
                "f(\"\"\"\n a \"quoted\" word, add --board\n \"\"\")",
                "f(\"give -Djna.tmpdir=X\")"
            })
    void whatIsLookedForIsFound(String source) {
        assertThat(literals(source)).anyMatch(NoCommandInCoreTest::namesCommand);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "f(\"bootmend knows no board x\") // Run `x`",
                "/* \"--in-place\" */ f(\"a start-up - or -1\")",
                "/** {@code --in-place} */ f(\"try-once\")"
            })
    void whatIsNoTextOrNoCommandIsNot(String source) {
        assertThat(literals(source)).noneMatch(NoCommandInCoreTest::namesCommand);
    }

    private static boolean namesCommand(String text) {
        return Stream.of(COMMAND, QUOTED_COMMAND, OPTION)
                .anyMatch(pattern -> pattern.matcher(text).find());
    }

    private static List<String> literals(String source) {
        return TOKEN.matcher(source)
                .results()
                .map(MatchResult::group)
                .filter(token -> token.startsWith("\""))
                .map(NoCommandInCoreTest::unquoted)
                .toList();
    }

    private static String unquoted(String token) {
        int quotes = token.startsWith("\"\"\"") ? 3 : 1;
        return token.substring(quotes, token.length() - quotes);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }
}
