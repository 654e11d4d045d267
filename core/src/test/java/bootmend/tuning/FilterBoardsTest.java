package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.FilterParser;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which boards know a filter, typed again from "Conditional filters", config_txt/conditional.adoc, commit 0456a78c;
 * {@code [HDMI:N]} from "Legacy conditional filters", commit f4685b7b; {@code board_attributes} and {@code bootvar0} from
 * the release notes of the boot firmware, commit 86759b04.
 */
class FilterBoardsTest {

    private static final String EVERY =
            "pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+ pi4 pi400 cm4 cm4s pi5 pi500 cm5";

    @ParameterizedTest
    @CsvSource({
        "[EDID=LAB-PANEL], pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+ pi4 pi400 cm4 cm4s",
        "[HDMI:1], pi4 pi400 cm4 cm4s",
        "[boot_arg1=2], pi5 pi500 cm5",
        "[boot_count>2], pi5 pi500 cm5",
        "[partition=2], pi5 pi500 cm5",
        "[bootvar0&1], pi4 pi400 cm4 cm4s pi5 pi500 cm5",
        "[board_attributes&2=2], pi4 pi400 cm4 cm4s pi5 pi500 cm5",
        "[boot_partition=1], " + EVERY,
        "[cust_otp3=1], " + EVERY,
        "[tryboot], " + EVERY,
        "[gpio4=1], " + EVERY,
        "[0x12345678], " + EVERY,
        "[all], " + EVERY,
    })
    void everyFilter(String section, String knowing) {
        TuningTables tables = TuningTables.load();
        var filter = new FilterParser(tables.boards().models()).parse(section);
        assertThat(tables.boards().all())
                .filteredOn(board -> tables.filters().missingOn(board, filter).isEmpty())
                .extracting(Board::id)
                .containsExactlyInAnyOrderElementsOf(Arrays.asList(knowing.split(" ")));
    }
}
