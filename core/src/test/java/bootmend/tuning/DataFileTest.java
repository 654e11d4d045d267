package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.StringReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Damage in a data file is named by file and line. CSV itself: RFC 4180. */
class DataFileTest {

    private static final String BOARDS = "# boards\nid,chip,sees,board_types,warranty_bit,try_once,note,source\n";
    private static final String BITS = "bit,meaning,source\n";

    @Test
    void commentsAndQuotedCellsAreRead() {
        DataFile file = file("# first\na,b\n# second\n1,\"x, \"\"y\"\"\"\n");

        assertThat(file.header()).containsExactly("a", "b");
        assertThat(file.rows()).hasSize(1);
        assertThat(file.rows().get(0).text("b")).isEqualTo("x, \"y\"");
        assertThat(file.rows().get(0).line()).isEqualTo(4);
    }

    @Test
    void aRowWithTooFewCells() {
        assertThatThrownBy(() -> file("a,b\n1,2\n3\n"))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("lab.csv, line 3")
                .hasMessageContaining("expected 2 cells, found 1");
    }

    @Test
    void anEmptyFile() {
        assertThatThrownBy(() -> file("# nothing\n"))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("no header");
    }

    @Test
    void aColumnTwice() {
        assertThatThrownBy(() -> file("a,a\n"))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("two columns");
    }

    @Test
    void otherColumnsThanExpected() {
        assertThatThrownBy(() -> ThrottleBits.read(file("bit,text\n")))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("expected the columns [bit, meaning, source]");
    }

    @Test
    void aMissingFile() {
        assertThatThrownBy(() -> DataFile.resource("none.csv"))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("none.csv")
                .hasMessageContaining("missing");
    }

    @Test
    void brokenQuotesAreAnErrorOfThatFile() {
        assertThatThrownBy(() -> file("a,b\n1,\"open"))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("lab.csv");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "32,too high,S4; should be 0 to 31",
                "-1,too low,S4; should be 0 to 31",
                "x,no number,S4; should be a number, found x",
                "1,,S4; column meaning is empty",
            })
    void badThrottleBits(String row, String problem) {
        assertThatThrownBy(() -> ThrottleBits.read(file(BITS + row + "\n")))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("line 2")
                .hasMessageContaining(problem);
    }

    @Test
    void theSameKeyTwice() {
        assertThatThrownBy(() -> ThrottleBits.read(file(BITS + "1,a,S4\n1,b,S4\n")))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("line 3")
                .hasMessageContaining("earlier row for 1");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "pi4,BCM2711,pi400 pi4,0x11,tracked,no,,S2; sees should start with pi4",
                "pi4,BCM2711,pi4,0x11,maybe,no,,S2; warranty_bit should be one of",
                "pi4,BCM2711,pi4,0x100,tracked,no,,S2; board type 0x100",
                "pi4,BCM2711,pi4,0x11 0x11,tracked,no,,S2; board type 0x11",
            })
    void badBoards(String row, String problem) {
        assertThatThrownBy(() -> Boards.read(file(BOARDS + row + "\n")))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("line 3")
                .hasMessageContaining(problem);
    }

    @Test
    void aStockColumnForRevisionsThatCannotBe() {
        Vocabulary vocabulary = TuningTables.load().vocabulary();
        assertThatThrownBy(() -> stock("key,pi4@4-3,source\narm_freq,1500,S1\n", vocabulary))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("revisions run from 0 to 15");
        assertThatThrownBy(() -> stock("key,pi4,source\nkernel,1500,S1\n", vocabulary))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("kernel is no key");
    }

    private static StockValues stock(String text, Vocabulary vocabulary) {
        return StockValues.read(
                file(text),
                file("key,boards,number,when,source\n"),
                vocabulary,
                TuningTables.load().sources());
    }

    private static DataFile file(String text) {
        return DataFile.read("lab.csv", new StringReader(text));
    }
}
