package bootmend.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TerminalWidthTest {

    @ParameterizedTest
    @CsvSource({"120, 120", "39, 40", "9999, 9999", "0, 80", "-5, 80", "12345, 80", "wide, 80"})
    void theVariableSaysHowWideAsFarAsItMakesSense(String columns, int width) {
        assertThat(new TerminalWidth(Map.of("COLUMNS", columns), false).columns())
                .isEqualTo(width);
    }

    @Test
    void whatIsNoTerminalIsAsWideAsUsual() {
        assertThat(new TerminalWidth(Map.of(), false).columns()).isEqualTo(80);
    }

    @Test
    void theTerminalsAnswerIsRead() {
        assertThat(TerminalWidth.parse("24 132\n")).isEqualTo(OptionalInt.of(132));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "0 0\n", "24\n", "24 x", "stty: standard input", "24 99999"})
    void anAnswerThatMakesNoSenseIsNone(String answer) {
        assertThat(TerminalWidth.parse(answer)).isEmpty();
    }
}
