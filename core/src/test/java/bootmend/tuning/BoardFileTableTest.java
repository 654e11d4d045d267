package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Boot files of each board against "Boot options", config_txt/boot.adoc, commit f6839a6f, typed again here. Rows that
 * say "from memory" have no source.
 */
class BoardFileTableTest {

    private final TuningTables tables = TuningTables.load();

    @ParameterizedTest
    @CsvSource({
        "pi1, kernel.img", "pi0, kernel.img", "pi0w, kernel.img", "cm1, kernel.img",
        "pi2, kernel7.img", "pi3, kernel7.img", "pi3+, kernel7.img", "pi02, kernel7.img", "cm3, kernel7.img",
        "cm3+, kernel7.img", "pi4, kernel8.img", "pi400, kernel8.img", "cm4, kernel8.img",
    })
    void theDefaultKernelComesFirst(String board, String kernel) {
        assertThat(files(board).kernels().get(0)).isEqualTo(kernel);
    }

    @ParameterizedTest
    @CsvSource({"pi4", "pi400", "cm4"})
    void the32BitKernelServesThePi4FamilyToo(String board) {
        assertThat(files(board).kernels()).contains("kernel7l.img");
    }

    @ParameterizedTest
    @CsvSource({
        "pi0, start.elf, fixup.dat, true", "pi1, start.elf, fixup.dat, true", "pi3, start.elf, fixup.dat, true",
        // The names with a 4 in them are from memory.
        "pi4, start4.elf, fixup4.dat, false", "cm4, start4.elf, fixup4.dat, false",
    })
    void boardsBeforePi4NeedBootcodeAndFirmwareComesInPairs(String board, String firmware, String fixup,
            boolean bootcode) {
        assertThat(files(board).firmware().get(0)).isEqualTo(new FirmwarePair(firmware, fixup));
        assertThat(files(board).bootcode()).isEqualTo(bootcode);
    }

    @Test
    void pi5NeedsNeitherFirmwareNorBootcode() {
        assertThat(files("pi5").firmware()).isEmpty();
        assertThat(files("pi5").bootcode()).isFalse();
    }

    @Test
    void everyBoardHasARow() {
        assertThat(tables.boards().all()).allSatisfy(board -> assertThat(tables.boardFiles().find(board.id()))
                .isPresent());
    }

    @Test
    void aRowSaysWhereItComesFrom() {
        assertThat(files("pi4").citation()).contains("Boot options").contains("f6839a6f").contains("value from memory");
        assertThat(files("cm5").citation()).isEqualTo("value from memory");
    }

    private BoardFiles files(String board) {
        return tables.boardFiles().find(board).orElseThrow();
    }
}
