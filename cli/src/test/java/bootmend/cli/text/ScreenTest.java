package bootmend.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Help.Ansi;

/** What is printed fits and is whole. */
class ScreenTest {

    private final StringWriter out = new StringWriter();

    @Test
    void aTableThatFitsIsAsWideAsItsCells() {
        screen(40).table(List.of("key", "value"), List.of(List.of("arm_freq", "2000 MHz"), List.of("gpu_freq", "")));

        assertThat(lines()).containsExactly("key       value", "arm_freq  2000 MHz", "gpu_freq");
    }

    @Test
    void aCellThatIsTooLongGoesOnBelow() {
        screen(40)
                .table(
                        List.of("key", "state"),
                        List.of(List.of("arm_freq", "depends on the board and on what else is set there")));

        assertThat(lines())
                .containsExactly(
                        "key       state", "arm_freq  depends on the board and on", "          what else is set there");
    }

    @Test
    void aTableThatCannotFitBecomesABlockARow() {
        String path = "/media/cards/a-rather-long-name-of-a-card.img";
        screen(40).table(List.of("card", "state"), List.of(List.of(path, "ready"), List.of(path, "")));

        assertThat(lines()).containsExactly("card   " + path, "state  ready", "", "card   " + path);
    }

    @Test
    void linesHangBelowTheirIndentAndWordsAreNeverCut() {
        Screen screen = screen(40);
        screen.line("  config.txt line 7: over_voltage=8 is more than this board's limit");
        screen.line("0123456789012345678901234567890123456789012345 after");
        screen.paragraph("source", 8, "one two three four five six seven eight nine");

        assertThat(lines())
                .containsExactly(
                        "  config.txt line 7: over_voltage=8 is",
                        "    more than this board's limit",
                        "0123456789012345678901234567890123456789012345",
                        "after",
                        "source  one two three four five six",
                        "        seven eight nine");
    }

    /** Whatever the cells are: no line is too wide but for one word and its name, and all words are there in order. */
    @Test
    void anyTableFitsAndIsWhole() {
        Random random = new Random(7);
        for (int round = 0; round < 300; round++) {
            out.getBuffer().setLength(0);
            int columns = 1 + random.nextInt(6);
            List<String> row = random.ints(columns, 0, 90)
                    .mapToObj(length -> cell(random, length))
                    .toList();
            screen(80).table(Collections.nCopies(columns, "head"), List.of(row));

            for (String line : lines()) {
                assertThat(line.length() <= 80 || line.strip().split(" +").length <= 2)
                        .as(line)
                        .isTrue();
            }
            String printed = out.toString().replaceAll("\\s", "");
            for (String cell : row) {
                Arrays.stream(cell.split(" "))
                        .forEach(word -> assertThat(printed).contains(word));
            }
        }
    }

    @Test
    void aStyleEndsWithAPlainReset() {
        new Screen(new PrintWriter(out, true), Ansi.ON, 80).line("bold", "done");

        assertThat(out.toString().strip()).isEqualTo("\u001b[1mdone\u001b[0m");
    }

    @Test
    void controlCharactersAreMadeVisible() {
        screen(80).table(List.of("a"), List.of(List.of("x\u001b[2J")));
        screen(80).exact("y\u001b[2J");

        assertThat(lines()).containsExactly("a", "x\\x1B[2J", "y\\x1B[2J");
    }

    private static String cell(Random random, int length) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < length; i++) {
            text.append(random.nextInt(8) == 0 ? ' ' : (char) ('a' + random.nextInt(26)));
        }
        return text.toString().strip();
    }

    private Screen screen(int width) {
        return new Screen(new PrintWriter(out, true), Ansi.OFF, width);
    }

    private List<String> lines() {
        return out.toString().lines().toList();
    }
}
