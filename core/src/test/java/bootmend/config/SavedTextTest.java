package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Forms a config file is saved in; what UTF-16, its marks and U+2018 to U+201F are: the Unicode Standard, 23.8 and 6.2. */
class SavedTextTest {

    private static final String TEXT = "# cart 3\n[pi4]\narm_freq=2000\n";

    @Test
    void plainTextHasNoProblem() {
        byte[] bytes = bytes("# caf\u00E9 \u201Cquoted\u201D\r\narm_freq=2000\r\n");
        assertThat(SavedText.of(bytes).problems()).isEmpty();
        assertThat(SavedText.of(bytes).repaired()).contains(bytes);
    }

    @ParameterizedTest
    @CsvSource({"UTF-16LE, true", "UTF-16LE, false", "UTF-16BE, true", "UTF-16BE, false"})
    void utf16BecomesPlain(Charset charset, boolean mark) {
        SavedText saved = SavedText.of(((mark ? "\uFEFF" : "") + TEXT).getBytes(charset));
        assertThat(saved.problems()).containsExactly(SavedText.Problem.UTF_16);
        assertThat(saved.repaired()).contains(bytes(TEXT));
    }

    @Test
    void utf16ThatBreaksOffIsNotGuessedAt() {
        byte[] whole = ("\uFEFF" + TEXT).getBytes(StandardCharsets.UTF_16LE);
        SavedText saved = SavedText.of(Arrays.copyOf(whole, whole.length - 1));
        assertThat(saved.problems()).containsExactly(SavedText.Problem.UTF_16);
        assertThat(saved.repaired()).isEmpty();
    }

    @Test
    void bytesThatAreNoTextAreNotTakenForUtf16() {
        assertThat(SavedText.of(new byte[512]).problems()).isEmpty();
        assertThat(SavedText.of(new byte[] {1, 0}).problems()).isEmpty();
    }

    @Test
    void everyProblemOfOneFileIsRepaired() {
        String text = "\uFEFF# \u201Cnote\u201D\rarm_freq=\u201C2000\u201D\rdtparam=\u2018spi=on\u2019\r";
        SavedText saved = SavedText.of(text.getBytes(StandardCharsets.UTF_16LE));
        assertThat(saved.problems())
                .containsExactlyInAnyOrder(
                        SavedText.Problem.UTF_16, SavedText.Problem.LONE_CR, SavedText.Problem.TYPOGRAPHIC_QUOTES);
        assertThat(saved.repaired()).contains(bytes("# \u201Cnote\u201D\narm_freq=2000\ndtparam=spi=on\n"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "arm_freq=\u201C2000\u201D; arm_freq=2000",
                "arm_freq= \u20182000\u2019 ; arm_freq= 2000",
                "dtoverlay=name,label=\u201Ca b\u201D,x; dtoverlay=name,label=\"a b\",x",
                "dtoverlay=it\u2019s; dtoverlay=it's"
            })
    void quotesRoundAValueGoAndOthersBecomePlain(String line, String plain) {
        assertThat(SavedText.of(bytes(line)).repaired().map(CardText::decode).map(String::stripTrailing))
                .contains(plain);
    }

    @Test
    void onlyLinesThatCountAreTouched() {
        byte[] bytes = bytes("# \u201Cnote\u201D\n\n[pi4]\n");
        assertThat(SavedText.of(bytes).problems()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "config.txt.txt",
                "config.txt ",
                " config.txt",
                "config .txt",
                "CONFIG",
                "config\u00A0.txt",
                "Config.txt.TXT",
                "CONFIG~1.TXT",
                "config.txt\u200B"
            })
    void tellsNamesThatAreMeantToBeConfigTxt(String name) {
        assertThat(ConfigName.isMisnamed(name)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "config.txt",
                "CONFIG.TXT",
                "Config.Txt",
                "config-old.txt",
                "config.bak",
                "configs",
                "usercfg.txt",
                "config.txt.bak"
            })
    void leavesOtherNamesAlone(String name) {
        assertThat(ConfigName.isMisnamed(name)).isFalse();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
