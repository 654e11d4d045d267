package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.Truth;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The vocabulary against "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446, typed again here. */
class TuningKeysTableTest {

    private final Vocabulary vocabulary = TuningTables.load().vocabulary();

    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "arm_freq, clock, MHz, -, -, per board, true",
                "arm_freq_min, clock, MHz, -, -, per board, true",
                "arm_boost, clock, flag, 0, 1, not published, false",
                "gpu_freq, clock, MHz, -, -, per board, true",
                "core_freq, clock, MHz, -, -, per board, true",
                "h264_freq, clock, MHz, -, -, per board, true",
                "isp_freq, clock, MHz, -, -, per board, true",
                "v3d_freq, clock, MHz, -, -, per board, true",
                "hevc_freq, clock, MHz, -, -, per board, true",
                "sdram_freq, clock, MHz, -, -, per board, true",
                "core_freq_min, clock, MHz, -, -, per board, true",
                "gpu_freq_min, clock, MHz, -, -, per board, true",
                "h264_freq_min, clock, MHz, -, -, per board, true",
                "isp_freq_min, clock, MHz, -, -, per board, true",
                "v3d_freq_min, clock, MHz, -, -, per board, true",
                "hevc_freq_min, clock, MHz, -, -, per board, true",
                "sdram_freq_min, clock, MHz, -, -, per board, true",
                "over_voltage, voltage, step, -16, 8, 0, true",
                "over_voltage_min, voltage, step, -16, 8, 0, true",
                "over_voltage_delta, voltage, microvolt, -, -, 0, true",
                "over_voltage_sdram, voltage, step, -16, 8, 0, true",
                "over_voltage_sdram_c, voltage, step, -16, 8, 0, true",
                "over_voltage_sdram_i, voltage, step, -16, 8, 0, true",
                "over_voltage_sdram_p, voltage, step, -16, 8, 0, true",
                "force_turbo, turbo, flag, 0, 1, 0, true",
                "initial_turbo, turbo, s, 0, 60, 0, true",
                "temp_limit, thermal, degC, -, 85, 85, true",
                "temp_soft_limit, thermal, degC, -, 70, 60, true",
            })
    void everyKeyHasItsPublishedUnitRangeAndStock(
            String name, String group, String unit, Long min, Long max, String stock, boolean resets) {
        TuningKey key = vocabulary.find(name).orElseThrow();

        assertThat(key.group()).isEqualTo(group);
        assertThat(key.unit()).isEqualTo(unit);
        assertThat(key.min()).isEqualTo(min == null ? OptionalLong.empty() : OptionalLong.of(min));
        assertThat(key.max()).isEqualTo(max == null ? OptionalLong.empty() : OptionalLong.of(max));
        assertThat(key.stock())
                .isEqualTo(
                        switch (stock) {
                            case "per board" -> new StockRule.PerBoard();
                            case "not published" -> new StockRule.NotPublished();
                            default -> new StockRule.Plain(Long.parseLong(stock));
                        });
        assertThat(key.resets()).isEqualTo(resets);
        assertThat(key.source().title()).isEqualTo("Overclocking options");
    }

    @Test
    void thereAreNoMoreKeysThanTheTableAbove() {
        assertThat(vocabulary.keys()).hasSize(28);
    }

    @ParameterizedTest
    @CsvSource({
        "sdram_freq, before the pi4 family, pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+",
        "sdram_freq_min, before the pi4 family, pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+",
        "over_voltage_min, before the pi4 family, pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+",
        "over_voltage_sdram, before the pi4 family, pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+",
        "over_voltage_sdram_c, before the pi4 family, pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+",
        "over_voltage_sdram_i, before the pi4 family, pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+",
        "over_voltage_sdram_p, before the pi4 family, pi0 pi0w pi02 cm0 pi1 cm1 pi2 pi3 pi3+ cm3 cm3+",
        "over_voltage_delta, pi4 and pi5 families, pi4 pi400 cm4 cm4s pi5 pi500 cm5",
        "hevc_freq, pi4 family, pi4 pi400 cm4 cm4s",
        "temp_soft_limit, pi3+, pi3+",
        "arm_boost, pi4 rev 1.4+ and later, pi4 pi400 cm4 cm4s pi5 pi500 cm5",
    })
    void keysForSomeBoardsOnly(String name, String appliesTo, String boards) {
        TuningKey key = vocabulary.find(name).orElseThrow();

        assertThat(key.appliesTo()).isEqualTo(appliesTo);
        assertThat(key.boards().isEvery()).isFalse();
        assertThat(key.boards().ranges()).extracting(BoardRange::board).containsExactlyInAnyOrder(boards.split(" "));
    }

    @Test
    void everyOtherKeyIsForEveryBoard() {
        assertThat(vocabulary.keys()).filteredOn(key -> !key.boards().isEvery()).hasSize(11);
        assertThat(vocabulary.keys())
                .filteredOn(key -> key.boards().isEvery())
                .allSatisfy(key -> assertThat(key.appliesTo()).isEqualTo("all"));
    }

    @Test
    void armBoostStartsAtRevision14OfPi4() {
        BoardSet boards = vocabulary.find("arm_boost").orElseThrow().boards();

        assertThat(boards.contains("pi4", OptionalInt.of(3))).isEqualTo(Truth.FALSE);
        assertThat(boards.contains("pi4", OptionalInt.of(4))).isEqualTo(Truth.TRUE);
        assertThat(boards.contains("pi4", OptionalInt.empty())).isEqualTo(Truth.UNKNOWN);
        assertThat(boards.contains("cm4", OptionalInt.empty())).isEqualTo(Truth.TRUE);
        assertThat(boards.contains("pi3", OptionalInt.empty())).isEqualTo(Truth.FALSE);
    }

    @Test
    void keysThatSetOthers() {
        assertThat(vocabulary.find("gpu_freq").orElseThrow().sets())
                .containsExactly("core_freq", "h264_freq", "isp_freq", "v3d_freq", "hevc_freq");
        assertThat(vocabulary.find("over_voltage_sdram").orElseThrow().sets())
                .containsExactly("over_voltage_sdram_c", "over_voltage_sdram_i", "over_voltage_sdram_p");
        assertThat(vocabulary.keys()).filteredOn(key -> !key.sets().isEmpty()).hasSize(2);
    }

    @Test
    void onlyTempLimitIsClamped() {
        assertThat(vocabulary.keys())
                .filteredOn(TuningKey::clamped)
                .extracting(TuningKey::key)
                .containsExactly("temp_limit");
    }

    @Test
    void namesAreCaseSensitive() {
        assertThat(vocabulary.find("ARM_FREQ")).isEmpty();
        assertThat(vocabulary.findIgnoringCase("ARM_FREQ")).map(TuningKey::key).contains("arm_freq");
    }
}
