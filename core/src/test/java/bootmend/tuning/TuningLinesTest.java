package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.ConfigBytes;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;

/** Which lines count, and what going back to stock does to them. */
class TuningLinesTest {

    private final Vocabulary vocabulary = TuningTables.load().vocabulary();

    @Example
    void onlyTheVocabularysKeysAreListed() {
        List<TuningLine> lines =
                find("dtparam=spi=on\n[pi4]\narm_freq=2000\nkernel=kernel8.img\n# note\nover_voltage=6\n");

        assertThat(lines).extracting(TuningLine::lineNumber).containsExactly(3, 6);
        assertThat(lines).extracting(TuningLine::key).containsExactly("arm_freq", "over_voltage");
        assertThat(lines).extracting(TuningLine::value).containsExactly("2000", "6");
        assertThat(lines).allSatisfy(line -> {
            assertThat(line.section()).contains("[pi4]");
            assertThat(line.state()).isEqualTo(TuningLineState.ACTIVE);
        });
    }

    @Example
    void aCommentedOutSettingIsListedAsSuch() {
        assertThat(states("#arm_freq=2000\n")).containsExactly(TuningLineState.COMMENTED_OUT);
    }

    @Example
    void aSettingInSectionNoneNeverApplies() {
        assertThat(states("[none]\narm_freq=2000\n[all]\narm_freq=2100\n"))
                .containsExactly(TuningLineState.NEVER_APPLIES, TuningLineState.ACTIVE);
    }

    /** Source: a Linux distributor's boards documentation, "Edit the boot configuration", section on format. */
    @Example
    void aKeyInTheWrongCaseIsNotRead() {
        assertThat(states("ARM_FREQ=2000\nArm_freq =2000\n"))
                .containsExactly(TuningLineState.WRONG_CASE, TuningLineState.WRONG_CASE);
    }

    /** Source: a Linux distributor's boards documentation, "Edit the boot configuration", section on format. */
    @Example
    void aBlankBeforeEqualsMakesAnotherKey() {
        assertThat(states("arm_freq = 2000\n")).containsExactly(TuningLineState.BLANK_IN_KEY);
    }

    /** No source: the careful reading. */
    @Example
    void aBlankBeforeTheKeyOrAfterEqualsLeavesTheLineActive() {
        assertThat(states("  arm_freq=2000\narm_freq= 2000\n"))
                .containsExactly(TuningLineState.ACTIVE, TuningLineState.ACTIVE);
    }

    @Example
    void backToStockLeavesShownKeysAndForeignLines() {
        ConfigDocument document = document("arm_boost=1\r\narm_freq=2000\r\n[none]\r\ngpu_freq=600\r\n[all]\r\n"
                + "#over_voltage=2\r\nover_voltage=6\r\ndtparam=spi=on");

        assertThat(text(reset(document, false)))
                .isEqualTo("arm_boost=1\r\n#arm_freq=2000\r\n"
                        + "[none]\r\ngpu_freq=600\r\n[all]\r\n#over_voltage=2\r\n#over_voltage=6\r\ndtparam=spi=on");
        assertThat(text(reset(document, true)))
                .isEqualTo("arm_boost=1\r\n" + "[none]\r\ngpu_freq=600\r\n[all]\r\n#over_voltage=2\r\ndtparam=spi=on");
    }

    @Property(tries = 300)
    @Domain(ConfigBytes.class)
    void backToStockTwiceEqualsOnce(@ForAll byte[] bytes) {
        ConfigDocument document = ConfigDocument.parse(bytes);
        ConfigDocument commented = reset(document, false);
        ConfigDocument removed = reset(document, true);

        assertThat(reset(commented, false)).isEqualTo(commented);
        assertThat(reset(removed, true)).isEqualTo(removed);
        assertThat(TuningLines.find(commented, vocabulary)).noneMatch(TuningLine::resets);
        assertThat(TuningLines.find(removed, vocabulary)).noneMatch(TuningLine::resets);
    }

    @Property(tries = 300)
    @Domain(ConfigBytes.class)
    void backToStockChangesNoLineThatIsNotATuningLine(@ForAll byte[] bytes) {
        ConfigDocument document = ConfigDocument.parse(bytes);
        List<Integer> changed = TuningLines.find(document, vocabulary).stream()
                .filter(TuningLine::resets)
                .map(TuningLine::lineNumber)
                .toList();
        ConfigDocument after = reset(document, false);

        assertThat(after.toBytes()).hasSize(bytes.length + changed.size());
        for (ConfigLine line : document.lines()) {
            String prefix = changed.contains(line.number()) ? "#" : "";
            assertThat(latin1(after.line(line.number()))).isEqualTo(prefix + latin1(line));
        }
    }

    private ConfigDocument reset(ConfigDocument document, boolean remove) {
        return StockReset.apply(document, StockReset.of(document, vocabulary, Set.of(), line -> false), remove);
    }

    private List<TuningLineState> states(String text) {
        return find(text).stream().map(TuningLine::state).toList();
    }

    private List<TuningLine> find(String text) {
        return TuningLines.find(document(text), vocabulary);
    }

    private static ConfigDocument document(String text) {
        return ConfigDocument.parse(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String text(ConfigDocument document) {
        return new String(document.toBytes(), StandardCharsets.UTF_8);
    }

    private static String latin1(ConfigLine line) {
        return new String(line.bytes(), StandardCharsets.ISO_8859_1);
    }
}
