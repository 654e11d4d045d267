package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Character classes: The Unicode Standard, chapter 4, general category; directions: Unicode Annex 9. */
class VisibleTextTest {

    @Test
    void ordinaryTextStays() {
        assertThat(VisibleText.of("Schüler-Roboter 4 – 机器人 🤖 \\n")).isEqualTo("Schüler-Roboter 4 – 机器人 🤖 \\n");
    }

    @Test
    void aTerminalSequenceIsWrittenOut() {
        assertThat(VisibleText.of("\u001B[2Jarm_freq=\u009B31m9\u0007")).isEqualTo("\\x1B[2Jarm_freq=\\x9B31m9\\x07");
        assertThat(VisibleText.of("a\tb\r\nc\u007F")).isEqualTo("a\\x09b\\x0D\\x0Ac\\x7F");
    }

    @ParameterizedTest
    @ValueSource(
            ints = {
                0x061C, 0x200B, 0x200E, 0x200F, 0x2028, 0x2029, 0x202A, 0x202E, 0x2066, 0x2069, 0xFEFF, 0xD800, 0xE0041
            })
    void whatHidesOrReordersTextIsWrittenOut(int character) {
        String text = "a" + Character.toString(character) + "b";
        assertThat(VisibleText.of(text)).isEqualTo(String.format("a\\u{%X}b", character));
    }

    @Test
    void bytesAreUtf8WhereTheyCanBe() {
        assertThat(CardText.decode(new byte[] {(byte) 0xC3, (byte) 0xA9})).isEqualTo("é");
        assertThat(CardText.decode(new byte[] {(byte) 0xE9})).isEqualTo("é");
        assertThat(VisibleText.of(new byte[] {(byte) 0xC3, 0x1B})).isEqualTo("Ã\\x1B");
    }
}
