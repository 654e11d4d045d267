package bootmend.gui.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The window's words: none is missing, none is left over, and none frightens. */
class WordsTest {

    private static final Path SOURCES = Path.of("src/main/java/bootmend/gui");
    private static final Path BUNDLE = Path.of("src/main/resources/bootmend/gui/text/window.properties");
    /** Keys that are put together from a part and a word. */
    private static final Pattern BUILT = Pattern.compile("\"((?:[a-z]+\\.)+)\" \\+");
    private static final Pattern WHOLE = Pattern.compile("\"([a-z]+(?:\\.[a-z]+)+)\"");

    @Test
    void everyKeyInTheSourcesHasItsText() throws IOException {
        Words words = new Words(Locale.ENGLISH);

        assertThat(found(WHOLE).stream().filter(key -> keys().stream().anyMatch(
                known -> known.startsWith(key.substring(0, key.indexOf('.') + 1)))).filter(key -> !words.has(key))
                .filter(key -> !key.endsWith(".properties") && !key.endsWith(".css"))).isEmpty();
    }

    @Test
    void noTextIsLeftOver() throws IOException {
        Set<String> whole = found(WHOLE);
        Set<String> built = found(BUILT);

        assertThat(keys()).filteredOn(key -> !whole.contains(key) && built.stream().noneMatch(key::startsWith)).isEmpty();
    }

    @Test
    void noKeyStandsThereTwice() throws IOException {
        assertThat(Files.readAllLines(BUNDLE).stream().filter(line -> line.matches("[a-z].*=.*"))
                .map(line -> line.substring(0, line.indexOf('=')))).doesNotHaveDuplicates();
    }

    @Test
    void everyTextIsAPattern() throws IOException {
        Words words = new Words(Locale.ENGLISH);

        keys().forEach(key -> assertThat(words.of(key, 1, 2, 3, 4)).as(key).isNotBlank());
    }

    @Test
    void noControlSpeaksOfFormattingOrOfHarm() throws IOException {
        Words words = new Words(Locale.ENGLISH);
        List<String> frightening = List.of("format", "wipe", "destroy", "burn", "overwrite the card", "!");

        keys().forEach(key -> assertThat(words.of(key, 1, 2, 3, 4).toLowerCase(Locale.ROOT)).as(key)
                .doesNotContain(frightening.toArray(CharSequence[]::new)));
    }

    private static Set<String> keys() {
        Properties properties = new Properties();
        try (Reader in = Files.newBufferedReader(BUNDLE, StandardCharsets.UTF_8)) {
            properties.load(in);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return properties.stringPropertyNames();
    }

    private static Set<String> found(Pattern pattern) throws IOException {
        Set<String> found = new HashSet<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file : files.filter(each -> each.toString().endsWith(".java")).toList()) {
                found.addAll(pattern.matcher(Files.readString(file)).results().map((MatchResult match) -> match.group(1))
                        .collect(Collectors.toSet()));
            }
        }
        return found;
    }
}
