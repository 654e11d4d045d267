package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stock clocks in MHz against "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446, typed again. */
class StockValuesTableTest {

    private final StockValues stock = TuningTables.load().stock();

    @ParameterizedTest
    @CsvSource(useHeadersInDisplayName = true, textBlock = """
            key,            pi0,  pi0w, pi1, pi2, pi3, pi3+, cm4,  pi400, pi02, pi5
            arm_freq,       1000, 1000, 700, 900, 1200, 1400, 1500, 1800, 1000, 2400
            core_freq,      400,  400,  250, 250, 400,  400,  500,  500,  400,  910
            h264_freq,      300,  300,  250, 250, 400,  400,  500,  500,  300,  n/a
            isp_freq,       300,  300,  250, 250, 400,  400,  500,  500,  300,  910
            v3d_freq,       300,  300,  250, 250, 400,  400,  500,  500,  300,  910
            hevc_freq,      n/a,  n/a,  n/a, n/a, n/a,  n/a,  500,  500,  n/a,  910
            sdram_freq,     450,  450,  400, 450, 450,  500,  3200, 3200, 450,  4267
            arm_freq_min,   700,  700,  700, 600, 600,  600,  600,  600,  600,  1500
            core_freq_min,  250,  250,  250, 250, 250,  250,  200,  200,  250,  500
            gpu_freq_min,   250,  250,  250, 250, 250,  250,  250,  250,  250,  500
            h264_freq_min,  250,  250,  250, 250, 250,  250,  250,  250,  250,  n/a
            isp_freq_min,   250,  250,  250, 250, 250,  250,  250,  250,  250,  500
            v3d_freq_min,   250,  250,  250, 250, 250,  250,  250,  250,  250,  500
            sdram_freq_min, 400,  400,  400, 400, 400,  400,  3200, 3200, 400,  4267
            """)
    void everyPublishedValue(
            String key,
            String pi0,
            String pi0w,
            String pi1,
            String pi2,
            String pi3,
            String pi3plus,
            String cm4,
            String pi400,
            String pi02,
            String pi5) {
        assertStock(key, "pi0", pi0);
        assertStock(key, "pi0w", pi0w);
        assertStock(key, "pi1", pi1);
        assertStock(key, "pi2", pi2);
        assertStock(key, "pi3", pi3);
        assertStock(key, "pi3+", pi3plus);
        assertStock(key, "cm4", cm4);
        assertStock(key, "pi400", pi400);
        assertStock(key, "pi02", pi02);
        assertStock(key, "pi5", pi5);
    }

    @ParameterizedTest
    @CsvSource({
        "core_freq, 500",
        "h264_freq, 500",
        "isp_freq, 500",
        "v3d_freq, 500",
        "hevc_freq, 500",
        "sdram_freq, 3200",
        "arm_freq_min, 600",
        "core_freq_min, 200",
        "gpu_freq_min, 250",
        "h264_freq_min, 250",
        "isp_freq_min, 250",
        "v3d_freq_min, 250",
        "sdram_freq_min, 3200"
    })
    void pi4HasOneValueForAllRevisionsInEveryRowButArmFreq(String key, long mhz) {
        assertThat(stock.of(key, "pi4", OptionalInt.empty())).containsExactly(new Stock.Value(mhz));
        assertThat(stock.of(key, "pi4", OptionalInt.of(1))).containsExactly(new Stock.Value(mhz));
        assertThat(stock.of(key, "pi4", OptionalInt.of(4))).containsExactly(new Stock.Value(mhz));
    }

    @Test
    void armFreqOfPi4RisesWithArmBoostFromRevision14On() {
        Stock older = new Stock.Value(1500);
        Stock newer = new Stock.WithBoost(1500, 1800, "arm_boost", 1);

        assertThat(stock.of("arm_freq", "pi4", OptionalInt.of(3))).containsExactly(older);
        assertThat(stock.of("arm_freq", "pi4", OptionalInt.of(4))).containsExactly(newer);
        assertThat(stock.of("arm_freq", "pi4", OptionalInt.of(5))).containsExactly(newer);
        assertThat(stock.of("arm_freq", "pi4", OptionalInt.empty())).containsExactly(older, newer);
    }

    @ParameterizedTest
    @CsvSource({
        "arm_freq, cm1",
        "arm_freq, cm3",
        "arm_freq, cm3+",
        "arm_freq, cm4s",
        "arm_freq, cm0",
        "arm_freq, pi500",
        "arm_freq, cm5",
        "gpu_freq, pi4",
        "hevc_freq_min, pi4"
    })
    void whatIsNotPublishedStaysSo(String key, String board) {
        assertThat(stock.of(key, board, OptionalInt.empty())).containsExactly(new Stock.NotPublished());
    }

    @Test
    void whatALaterFirmwareOrTextBrought() {
        // Boot firmware release notes for BCM2712, commit 86759b04, entries 2024-11-12 and 2026-04-30; documentation
        // repository, pull request 4189 (960, the date of the change not given).
        TuningTables tables = TuningTables.load();
        for (String board : List.of("pi5", "pi500", "cm5")) {
            assertThat(figures(tables, "initial_turbo", board))
                    .as(board)
                    .containsExactly(new Figure.Value(0), new Figure.Value(60));
        }
        for (String board : List.of("pi4", "cm4", "pi3", "pi1", "pi02")) {
            assertThat(figures(tables, "initial_turbo", board)).as(board).containsExactly(new Figure.Value(0));
        }
        assertThat(figures(tables, "v3d_freq", "pi5"))
                .contains(new Figure.Value(910), new Figure.Value(960))
                .last()
                .isInstanceOfSatisfying(
                        Figure.DependsOn.class,
                        depends -> assertThat(depends.what()).contains("D0", "not published"));
        assertThat(figures(tables, "core_freq", "pi5")).containsExactly(new Figure.Value(910));
        assertThat(stock.figure(
                        tables.vocabulary().find("initial_turbo").orElseThrow(),
                        "pi5",
                        OptionalInt.empty(),
                        bootmend.config.Truth.FALSE))
                .isEqualTo(new Figure.DependsOn("the board's boot firmware"));
    }

    private static List<Figure> figures(TuningTables tables, String key, String board) {
        return tables.stock()
                .figures(
                        tables.vocabulary().find(key).orElseThrow(),
                        board,
                        OptionalInt.empty(),
                        bootmend.config.Truth.FALSE);
    }

    @Test
    void theTableHasNoMoreRowsThanAbove() {
        List<String> keys = TuningTables.load().vocabulary().keys().stream()
                .map(TuningKey::key)
                .filter(key -> !stock.perBoard(key).isEmpty())
                .toList();

        assertThat(keys).hasSize(14);
        assertThat(stock.perBoard("arm_freq")).hasSize(10);
    }

    private void assertStock(String key, String board, String expected) {
        Stock value = expected.equals("n/a") ? new Stock.DoesNothing() : new Stock.Value(Long.parseLong(expected));
        assertThat(stock.of(key, board, OptionalInt.empty()))
                .as("%s on %s", key, board)
                .filteredOn(each -> !(each instanceof Stock.Changed))
                .containsExactly(value);
    }
}
