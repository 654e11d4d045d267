package bootmend.earlier;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.ConfigDocument;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.TuningTables;
import bootmend.tuning.Vocabulary;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class EarlierTuningTest {

    private static final Vocabulary VOCABULARY = TuningTables.load().vocabulary();
    private static final EarlierTuning TUNING = new EarlierTuning(VOCABULARY);

    private static ConfigDocument document(String text) {
        return ConfigDocument.parse(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private static String after(String now, String then) {
        return new String(TUNING.apply(document(now), document(then)).toBytes(), StandardCharsets.ISO_8859_1);
    }

    @Test
    void aValueThatDiffersIsSetWhereItStands() {
        assertThat(after("# a\narm_freq=2100\nhdmi_group=1\n", "arm_freq=2000\n"))
                .isEqualTo("# a\narm_freq=2000\nhdmi_group=1\n");
    }

    @Test
    void aLineThatWasNotThereIsCommentedOut() {
        assertThat(after("arm_freq=2000\nforce_turbo=1\n", "arm_freq=2000\n"))
                .isEqualTo("arm_freq=2000\n#force_turbo=1\n");
    }

    @Test
    void aLineThatWasCommentedOutSinceIsLiveAgain() {
        assertThat(after("#arm_freq=2000\r\n#over_voltage=4\r\n", "arm_freq=2000\nover_voltage=4\n"))
                .isEqualTo("arm_freq=2000\r\nover_voltage=4\r\n");
    }

    @Test
    void aLineThatIsMissingIsAddedToItsSection() {
        assertThat(after("[pi4]\nhdmi_group=1\n\n[all]\ngpio=4=op\n", "[pi4]\narm_freq=2000\n[all]\ngpu_freq=600\n"))
                .isEqualTo("[pi4]\nhdmi_group=1\narm_freq=2000\n\n[all]\ngpio=4=op\ngpu_freq=600\n");
    }

    @Test
    void aSectionThatIsMissingIsAddedAndLeftAgain() {
        assertThat(after("hdmi_group=1\n", "[pi4]\narm_freq=2000\n"))
                .isEqualTo("hdmi_group=1\n[pi4]\narm_freq=2000\n[all]\n");
    }

    @Test
    void ofALineWithParametersOnlyThoseThatTuneChange() {
        assertThat(after("dtparam=audio=on,sd_overclock=100\n", "dtparam=audio=on\n"))
                .isEqualTo("dtparam=audio=on\n");
    }

    @Test
    void whatCanWriteABitOfAChipThatStaysIsNeverPutBack() {
        assertThat(after("arm_freq=2000\n", "arm_freq=2000\nprogram_usb_boot_mode=1\n"))
                .isEqualTo("arm_freq=2000\n");
    }

    @Property(tries = 500)
    void afterwardsTheActiveLinesAreThoseOfTheEarlierTextAndAgainChangesNothing(
            @ForAll("texts") String now, @ForAll("texts") String then) {
        ConfigDocument after = TUNING.apply(document(now), document(then));

        assertThat(lines(after)).containsExactlyInAnyOrderElementsOf(lines(document(then)));
        assertThat(TUNING.apply(after, document(then))).isEqualTo(after);
    }

    private static List<String> lines(ConfigDocument document) {
        return TuningLines.find(document, VOCABULARY).stream()
                .filter(line -> line.isActive() && EarlierTuning.isPutBack(line.tuningKey()))
                .map(EarlierTuningTest::text)
                .toList();
    }

    private static String text(TuningLine line) {
        return line.section().filter(section -> !section.equals("[all]")).orElse("") + line.key() + "=" + line.value();
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.of(
                        "arm_freq=2000\n",
                        "arm_freq=1900\n",
                        "#arm_freq=2000\n",
                        "over_voltage=4\r\n",
                        " gpu_freq=600\n",
                        "gpu_freq=500\n",
                        "[pi4]\n",
                        "[pi5]\n",
                        "[all]\n",
                        "hdmi_group=1\n",
                        "# a note\n",
                        "\n",
                        "force_turbo=1\n",
                        "dtparam=audio=on,sd_overclock=100\n",
                        "temp_limit=80")
                .list()
                .ofMaxSize(10)
                .map(lines -> String.join("", lines));
    }
}
