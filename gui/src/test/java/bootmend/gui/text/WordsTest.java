package bootmend.gui.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
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

    private static final Pattern MNEMONIC = Pattern.compile("_(\\w)");
    /** Example values, in which an underscore is part of a word. */
    private static final Pattern NO_CONTROL = Pattern.compile("^hint\\.");

    private static final Pattern WHOLE = Pattern.compile("\"([a-z]+(?:\\.[a-z]+)+)\"");

    @Test
    void everyKeyInTheSourcesHasItsText() throws IOException {
        Words words = new Words(Locale.ENGLISH);

        assertThat(found(WHOLE).stream()
                        .filter(key -> keys().stream()
                                .anyMatch(known -> known.startsWith(key.substring(0, key.indexOf('.') + 1))))
                        .filter(key -> !words.has(key))
                        .filter(key -> !key.endsWith(".properties") && !key.endsWith(".css")))
                .isEmpty();
    }

    @Test
    void noTextIsLeftOver() throws IOException {
        Set<String> whole = found(WHOLE);
        Set<String> built = found(BUILT);

        assertThat(keys())
                .filteredOn(key -> !whole.contains(key) && built.stream().noneMatch(key::startsWith))
                .isEmpty();
    }

    @Test
    void noKeyStandsThereTwice() throws IOException {
        assertThat(Files.readAllLines(BUNDLE).stream()
                        .filter(line -> line.matches("[a-z].*=.*"))
                        .map(line -> line.substring(0, line.indexOf('='))))
                .doesNotHaveDuplicates();
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

        keys().forEach(key -> assertThat(words.of(key, 1, 2, 3, 4).toLowerCase(Locale.ROOT))
                .as(key)
                .doesNotContain(frightening.toArray(CharSequence[]::new)));
    }

    @Test
    void noMenuUsesALetterTwice() {
        assertDistinct("the bar", "menu\\.(card|change|show)");
        assertDistinct("Card", "menu\\.(open|folder|read|eject|readers|close)");
        assertDistinct("Change", "menu\\.(stock|profile|back|make)");
        assertDistinct("Show", "menu\\.(page\\.[a-z]+|dark)");
    }

    @Test
    void noPageUsesALetterTwiceTogetherWithWhatStandsAroundIt() {
        String around = "menu\\.(card|change|show)|status\\.stop|cards\\..*|";
        String withStrip = around + "strip\\.(?!finish|reverse).*|";
        String withTrials = withStrip + "trials\\.(board|chart|table|add|next)|";

        assertDistinct("a change that was interrupted", around + "strip\\.(?!back).*");
        assertDistinct("Config file", withStrip + "sheet\\..*|batch\\.back");
        assertDistinct("Check", withStrip + "check\\..*|batch\\.back");
        assertDistinct("Damage", withStrip + "damage\\..*|batch\\.back");
        assertDistinct("Changes made", withStrip + "changes\\..*|batch\\.back");
        assertDistinct("Profiles", withStrip + "profiles?\\..*|batch\\.back");
        assertDistinct("saving a profile", withStrip + "saving\\..*|profiles\\.(save|import)|batch\\.back");
        assertDistinct("the next trial", withTrials + "stage\\..*|batch\\.back");
        assertDistinct("adding a trial", withTrials + "adding\\..*|batch\\.back");
        assertDistinct("several cards, before a change", around + "batch\\.(?!make\\.|back|checkthem).*");
        assertDistinct(
                "several cards, with a change", around + "batch\\.(?!workout|checkthem|make\\.(profile|repair)).*");
    }

    /** What is made has one letter, whatever it is: only one of these texts is there at a time. */
    @Test
    void theButtonThatMakesAChangeAlwaysHasTheSameLetter() {
        assertThat(mnemonics("strip\\.make|make\\..*").values()).containsOnly("a");
    }

    private static void assertDistinct(String place, String keys) {
        assertThat(mnemonics(keys).entrySet().stream()
                        .collect(Collectors.groupingBy(
                                Map.Entry::getValue, Collectors.mapping(Map.Entry::getKey, Collectors.toList())))
                        .values())
                .as(place)
                .isNotEmpty()
                .allMatch(each -> each.size() == 1);
    }

    /** Key to the letter that its text is reached by, in lower case; only keys that have one. */
    private static Map<String, String> mnemonics(String keys) {
        Properties texts = texts();
        Map<String, String> found = new HashMap<>();
        for (String key : texts.stringPropertyNames()) {
            Matcher letter = MNEMONIC.matcher(texts.getProperty(key));
            if (key.matches(keys) && !NO_CONTROL.matcher(key).find() && letter.find()) {
                found.put(key, letter.group(1).toLowerCase(Locale.ROOT));
            }
        }
        return found;
    }

    private static Set<String> keys() {
        return texts().stringPropertyNames();
    }

    private static Properties texts() {
        Properties properties = new Properties();
        try (Reader in = Files.newBufferedReader(BUNDLE, StandardCharsets.UTF_8)) {
            properties.load(in);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return properties;
    }

    private static Set<String> found(Pattern pattern) throws IOException {
        Set<String> found = new HashSet<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".java")).toList()) {
                found.addAll(pattern.matcher(Files.readString(file))
                        .results()
                        .map((MatchResult match) -> match.group(1))
                        .collect(Collectors.toSet()));
            }
        }
        return found;
    }
}
