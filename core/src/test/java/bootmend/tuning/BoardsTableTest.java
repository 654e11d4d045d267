package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Boards, typed again from their sources. Filters: "Conditional filters", config_txt/conditional.adoc, commits
 * 23cc7a36 and 3e67d54c. Type numbers and warranty bit: "Revision codes", revision-codes.adoc, commit 0456a78c.
 */
class BoardsTableTest {

    private final Boards boards = TuningTables.load().boards();

    @ParameterizedTest
    @CsvSource({
        "pi0, BCM2835, pi0, 0x09, tracked",
        "pi0w, BCM2835, pi0w pi0, 0x0c, tracked",
        "pi02, BCM2837, pi02 pi0w pi0, 0x12, tracked",
        "cm0, BCM2837, cm0 pi02 pi0w pi0, 0x1b, tracked",
        "pi1, BCM2835, pi1, 0x00 0x01 0x02 0x03, tracked",
        "cm1, BCM2835, cm1 pi1, 0x06, tracked",
        "pi2, BCM2836, pi2, 0x04, tracked",
        "pi3, BCM2837, pi3, 0x08, tracked",
        "pi3+, BCM2837, pi3+ pi3, 0x0d 0x0e, tracked",
        "cm3, BCM2837, cm3 pi3, 0x0a, tracked",
        "cm3+, BCM2837, cm3+ pi3+ pi3, 0x10, tracked",
        "pi4, BCM2711, pi4, 0x11, never set",
        "pi400, BCM2711, pi400 pi4, 0x13, not published",
        "cm4, BCM2711, cm4 pi4, 0x14, not published",
        "cm4s, BCM2711, cm4s pi4, 0x15, not published",
        "pi5, BCM2712, pi5, 0x17, not published",
        "pi500, BCM2712, pi500 pi5, 0x19, not published",
        "cm5, BCM2712, cm5 pi5, 0x18 0x1a, not published",
    })
    void everyBoard(String id, String chip, String sees, String types, String warranty) {
        Board board = boards.find(id).orElseThrow();

        assertThat(board.chip()).isEqualTo(chip);
        assertThat(board.sees()).containsExactly(sees.split(" "));
        assertThat(board.types())
                .containsExactlyElementsOf(
                        Arrays.stream(types.split(" ")).map(Integer::decode).toList());
        assertThat(board.warrantyBit().word()).isEqualTo(warranty);
        assertThat(board.types())
                .allSatisfy(type -> assertThat(boards.byType(type)).contains(board));
    }

    /** "EEPROM boot flow", bootflow-eeprom.adoc, commit 33cd51c5: all boards support the one-time flag. */
    @Test
    void everyBoardKnowsTheTryOnceStart() {
        assertThat(boards.all()).allMatch(Board::knowsTryOnce);
    }

    @Test
    void thereAreNoMoreBoardsThanAbove() {
        assertThat(boards.all()).hasSize(18);
        assertThat(boards.byType(0x05)).isEmpty();
        assertThat(boards.find("PI4")).isEmpty();
    }

    @Test
    void everyBoardNamedInTheOtherTablesExists() {
        TuningTables tables = TuningTables.load();
        assertThat(tables.vocabulary().keys()).allSatisfy(key -> {
            assertThat(key.boards().ranges())
                    .allSatisfy(range -> assertThat(boards.find(range.board())).isPresent());
            assertThat(key.unclear().ranges())
                    .allSatisfy(range -> assertThat(boards.find(range.board())).isPresent());
            assertThat(tables.stock().perBoard(key.key()))
                    .flatMap(BoardStock::boards)
                    .allSatisfy(range -> assertThat(boards.find(range.board())).isPresent());
        });
    }
}
