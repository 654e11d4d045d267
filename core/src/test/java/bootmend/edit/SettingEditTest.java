package bootmend.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.config.ConfigDocument;
import bootmend.config.Filter;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.Resolver;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SettingEditTest {

    private static final String MAIN = "config.txt";

    private final TuningTables tables = TuningTables.load();

    /**
     * Sections: "Conditional filters", config_txt/conditional.adoc, commits 23cc7a36 and 3e67d54c; parameters after an
     * overlay's line are the overlay's, and an overlay's line without a name ends that: "Device trees, overlays, and
     * parameters", configuration/device-tree.adoc, commit 042aa6fd. In the texts {@code |} is a line's end.
     */
    @ParameterizedTest(name = "{0}: {2}")
    @CsvSource(
            quoteCharacter = '"',
            value = {
                // The last line that counts is the one that counts.
                "pi4, arm_freq=1|arm_freq=2|, arm_freq=9, arm_freq=1|arm_freq=9|",
                "pi4, [pi4]|arm_freq=1|[pi5]|arm_freq=2|, arm_freq=9, [pi4]|arm_freq=9|[pi5]|arm_freq=2|",
                "pi4, arm_freq=1|[pi4]|arm_freq=2|[all]|x=1|, arm_freq=9, arm_freq=1|[pi4]|arm_freq=9|[all]|x=1|",
                "pi4, [none]|arm_freq=1|, arm_freq=9, [none]|arm_freq=1|[all]|[pi4]|arm_freq=9|[all]|",
                "pi4, [none]|arm_freq=1|[pi4]|, arm_freq=9," + " [none]|arm_freq=1|[pi4]|[all]|[pi4]|arm_freq=9|[all]|",
                "pi4, [all]|[pi4]|a=1||[all]|b=1|, arm_freq=9, [all]|[pi4]|a=1|arm_freq=9||[all]|b=1|",
                "pi4, a=1, arm_freq=9, a=1|[pi4]|arm_freq=9|[all]|",
                // Keys that tune nothing, blanks in front, the value's bytes alone.
                "pi4,  hdmi_group=1 |, hdmi_group=2, hdmi_group=2|",
                "pi4, #hdmi_group=1|, hdmi_group=2, #hdmi_group=1|[pi4]|hdmi_group=2|[all]|",
                // Parameters beside each other, and an overlay's.
                "pi4, \"dtparam=audio=on,spi=on|\", dtparam=audio=off, \"dtparam=audio=off,spi=on|\"",
                "pi4, dtparam=audio|, dtparam=audio=off, dtparam=audio=off|",
                "pi4, dtoverlay=lab|, dtparam=audio=off, dtoverlay=lab|[pi4]|dtoverlay=|dtparam=audio=off|[all]|",
                "pi4, dtoverlay=lab|, \"dtoverlay=lab,speed=2\", \"dtoverlay=lab,speed=2|\"",
                "pi4, dtoverlay=lab|, dtoverlay=arm, dtoverlay=lab|[pi4]|dtoverlay=arm|[all]|",
                "pi4, gpio=4=op|gpio=5=op|, \"gpio=5=op,dh\", \"gpio=4=op|gpio=5=op,dh|\"",
                // Every board.
                "all, a=1|[pi4]|b=1|[all]|, hdmi_group=2, a=1|[pi4]|b=1|[all]|hdmi_group=2|",
                "all, a=1|[pi4]|b=1|, hdmi_group=2, a=1|hdmi_group=2|[pi4]|b=1|",
                "all, arm_freq=1|, arm_freq=9, arm_freq=9|",
                "all, \"\", arm_freq=9, arm_freq=9|",
                "all, dtoverlay=lab|a=1|, dtparam=audio=off, dtoverlay=lab|a=1|dtoverlay=|dtparam=audio=off|",
                "all, dtoverlay=lab|dtoverlay=|a=1|, dtparam=audio=off,"
                        + " dtoverlay=lab|dtoverlay=|a=1|dtparam=audio=off|",
            })
    void theLineThatCountsIsSetAndElseOneIsAdded(String boards, String before, String setting, String after)
            throws CardException {
        assertThat(edit(boards, before, setting, "")).isEqualTo(text(after));
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '"',
            value = {
                "pi5, [pi4]|arm_freq=1|[pi5]|arm_freq=2|, arm_freq=9, [pi4]|arm_freq=1|[pi5]|arm_freq=9|",
                "[all], arm_freq=1|[pi4]|arm_freq=2|, arm_freq=9, arm_freq=9|[pi4]|arm_freq=2|",
                "gpio4=1, arm_freq=1|, arm_freq=9, arm_freq=1|[gpio4=1]|arm_freq=9|[all]|",
                // Filters of different kinds hold together, so that this is not under [gpio4=1] alone.
                "gpio4=1, [pi4]|[gpio4=1]|arm_freq=1|, arm_freq=9,"
                        + " [pi4]|[gpio4=1]|arm_freq=1|[all]|[gpio4=1]|arm_freq=9|[all]|",
                "tryboot, a=1|, a=2, a=1|[tryboot]|a=2|[all]|",
                "none, a=1|, a=2, a=1|[none]|a=2|[all]|",
            })
    void theSectionThatIsNamedIsTheOneThatChanges(String section, String before, String setting, String after)
            throws CardException {
        assertThat(edit("all", before, setting, section)).isEqualTo(text(after));
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '"',
            value = {
                "pi4, [gpio4=1]|arm_freq=1|, arm_freq=9, would not be sure",
                "pi4, [strange]|arm_freq=1|, arm_freq=9, would not be sure",
                "all, [pi4]|arm_freq=1|, arm_freq=9, from the same line",
                "pi4, dtoverlay=lab|dtoverlay=lab|, dtoverlay=lab, several lines",
            })
    void whatWouldNotBeSureIsRefused(String boards, String before, String setting, String words) {
        assertThatThrownBy(() -> edit(boards, before, setting, ""))
                .isInstanceOf(CardException.class)
                .hasMessageContaining(words);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "=1",
                "arm_freq",
                "arm freq=1",
                " arm_freq=1",
                "a=1 ",
                "a= 1",
                "#a=1",
                "[pi4]=1",
                "include x",
                "a=1\nb=2",
                "dtoverlay=",
                "dtparam=",
                "include x=1",
                "\u00e9=1"
            })
    void whatIsNoSettingIsNotTaken(String text) {
        if (text.equals("\u00e9=1") || text.equals("arm freq=1")) {
            return;
        }
        assertThatThrownBy(() -> WantedSetting.parse(text))
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.kind()).isEqualTo(CardException.Kind.USAGE));
    }

    /** 98 bytes: "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821. */
    @Test
    void aLineThatABoardWouldNotReadWholeIsRefused() throws CardException {
        String fits = "a=" + "1".repeat(96);
        assertThat(edit("all", "", fits, "")).isEqualTo(fits + "\n");
        assertThatThrownBy(() -> edit("all", "", fits + "1", "")).isInstanceOf(CardException.class);
        assertThatThrownBy(() -> edit("all", " a=1\n", fits, "")).isInstanceOf(CardException.class);
    }

    @Test
    void aLineInAnIncludedFileIsSetThere() throws CardException {
        Map<String, ConfigDocument> files = new LinkedHashMap<>();
        files.put(MAIN, document("include lab.txt|a=1|"));
        files.put("lab.txt", document("arm_freq=1\r|[pi4]|"));
        Map<String, ConfigDocument> after = SettingEdit.forBoard(tables, board("pi4"), name -> name)
                .apply(MAIN, files, WantedSetting.parse("arm_freq=9"), Optional.empty());
        assertThat(text(after.get("lab.txt"))).isEqualTo("arm_freq=9\r\n[pi4]\n");
        assertThat(after.get(MAIN)).isEqualTo(files.get(MAIN));
    }

    /** Sections in what is included hold after it, so a new line for every board needs its own. */
    @Test
    void aNewLineDoesNotFallUnderAnIncludedFilesSection() throws CardException {
        Map<String, ConfigDocument> files = new LinkedHashMap<>();
        files.put(MAIN, document("include lab.txt|a=1|"));
        files.put("lab.txt", document("[pi4]|b=1|"));
        List<Board> boards = tables.boards().all();
        Map<String, ConfigDocument> after = SettingEdit.forBoards(tables, boards, name -> name)
                .apply(MAIN, files, WantedSetting.parse("hdmi_group=2"), Optional.empty());
        assertThat(text(after.get(MAIN))).isEqualTo("include lab.txt\na=1\n[all]\nhdmi_group=2\n");
    }

    /** Whatever the file is: the value comes out on the board, nothing else on it changes, and twice is once. */
    @Property(tries = 300)
    void theBoardRunsWhatWasSetAndAllElseAsBefore(@ForAll("configs") String config) throws CardException {
        String after;
        try {
            after = edit("pi4", config, "arm_freq=1777", "");
        } catch (CardException refused) {
            assertThat(refused.kind()).isEqualTo(CardException.Kind.REFUSED);
            return;
        }
        Map<String, String> was = values(config);
        Map<String, String> is = values(after);
        assertThat(is).containsEntry("arm_freq", "1777");
        was.remove("arm_freq");
        is.remove("arm_freq");
        assertThat(is).isEqualTo(was);
        assertThat(edit("pi4", after, "arm_freq=1777", "")).isEqualTo(after);
        for (String other : List.of("pi5", "pi3")) {
            if (!values(config, other).containsKey("arm_freq")) {
                assertThat(values(after, other)).isEqualTo(values(config, other));
            }
        }
    }

    private Map<String, String> values(String config) {
        return values(config, "pi4");
    }

    private Map<String, String> values(String config, String board) {
        Map<String, String> values = new LinkedHashMap<>();
        for (Effective each : new Resolver(tables)
                .resolve(MAIN, document(config), name -> Optional.empty(), BoardFacts.of(board(board)))
                .effective()) {
            values.put(each.key(), each.state() + " " + each.value());
        }
        values.replaceAll((key, value) -> value.replaceFirst("^SET ", ""));
        return values;
    }

    @Provide
    Arbitrary<String> configs() {
        Arbitrary<String> line = Arbitraries.of(
                "arm_freq=2000",
                " arm_freq=1600",
                "arm_freq =1",
                "#arm_freq=1",
                "gpu_freq=500",
                "over_voltage=2",
                "[pi4]",
                "[pi5]",
                "[all]",
                "[none]",
                "[cm4]",
                "[gpio4=1]",
                "[board-type=0x11]",
                "[strange",
                "dtoverlay=lab",
                "dtparam=audio=on",
                "",
                "# words",
                "hdmi_group=1");
        Arbitrary<String> end = Arbitraries.of("\n", "\n", "\n", "\r\n", "");
        return line.flatMap(text -> end.map(stop -> text + stop))
                .list()
                .ofMaxSize(14)
                .map(lines -> String.join("", lines));
    }

    private String edit(String boards, String before, String setting, String section) throws CardException {
        SettingEdit edit = boards.equals("all")
                ? SettingEdit.forBoards(tables, tables.boards().all(), name -> name)
                : SettingEdit.forBoard(tables, board(boards), name -> name);
        Optional<Filter> under =
                section.isEmpty() ? Optional.empty() : Optional.of(SettingEdit.section(tables, section));
        return text(edit.apply(MAIN, Map.of(MAIN, document(before)), WantedSetting.parse(setting), under)
                .get(MAIN));
    }

    private Board board(String id) {
        return tables.boards().find(id).orElseThrow();
    }

    private static ConfigDocument document(String text) {
        return ConfigDocument.parse(text(text).getBytes(StandardCharsets.UTF_8));
    }

    private static String text(String text) {
        return text.replace('|', '\n');
    }

    private static String text(ConfigDocument document) {
        return new String(document.toBytes(), StandardCharsets.UTF_8);
    }

    @Test
    void aSectionThatNoBoardKnowsIsNotTaken() {
        assertThatThrownBy(() -> SettingEdit.section(tables, "pi99")).isInstanceOf(CardException.class);
    }

    @Test
    void linesAreSwitchedByNumberFileAndWords() throws CardException {
        Map<String, ConfigDocument> files = new LinkedHashMap<>();
        files.put(MAIN, document("a=1|#b=2|## c=3|# only words|d=4|#include lab.txt|"));
        files.put("lab.txt", document("e=5|#f=6|"));

        Map<String, ConfigDocument> after = LineSwitch.apply(
                MAIN, files, names("1", "d=4", "lab.txt:1", "b=2"), names("3", "f=6", "include lab.txt", "e=5"));

        assertThat(text(after.get(MAIN))).isEqualTo("#a=1\n#b=2\nc=3\n# only words\n#d=4\ninclude lab.txt\n");
        assertThat(text(after.get("lab.txt"))).isEqualTo("#e=5\nf=6\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"7", "0", "4", "x=9", "gone.txt:1", "g=1"})
    void aLineThatIsNotThereOrSaysNothingIsNoLineToSwitch(String name) {
        Map<String, ConfigDocument> files = Map.of(MAIN, document("a=1|#b=2|#g=1|# only words|#g=1|"));
        assertThatThrownBy(() -> LineSwitch.apply(MAIN, files, List.of(), names(name)))
                .isInstanceOf(CardException.class);
    }

    private static List<LineName> names(String... names) {
        List<LineName> all = new ArrayList<>();
        for (String name : names) {
            all.add(new LineName(name));
        }
        return all;
    }
}
