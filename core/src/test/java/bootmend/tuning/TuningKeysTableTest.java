package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.Truth;
import java.util.List;
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
        assertThat(key.citation()).contains(name.equals("arm_boost") ? "Common options" : "Overclocking options");
    }

    /**
     * Keys of other pages, each with the page it was typed again from. "Frequency management", commit 0456a78c: dvfs.
     * "Legacy overclocking options", commit 42e16c72: disable_auto_turbo, never_over_voltage. "Miscellaneous options",
     * commits c4029fd8 and 1da59914: avoid_warnings. "Overlay README", commits 07a47891 and 0a8cace2: clocks of the card
     * and fans. "Common options", commits 18beaa99 and 9038eea7: hdmi_enable_4kp60, power_force_3v3_pwm. "Boot options",
     * commit 0456a78c: the one-time and boot keys. "USB mass storage boot", commit 0456a78c: program_usb_boot_mode. No
     * source: sdram_schmoo, over_voltage_avs, disable_pvt. A default that a page only implies is "not published".
     */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            delimiter = ';',
            value = {
                "dvfs; voltage; mode; 1; 3; 3; true; Frequency management",
                "disable_auto_turbo; turbo; flag; 0; 1; not published; true; Legacy overclocking",
                "never_over_voltage; one-time; flag; 0; 1; not published; true; Legacy overclocking",
                "avoid_warnings; supply; mode; 0; 2; not published; true; Miscellaneous options",
                "current_limit_override; supply; number; -; -; not published; true; pull request 569",
                "sdram_schmoo; memory; bits; -; -; not published; true; no source found",
                "over_voltage_avs; voltage; microvolt; -; -; not published; true; no source found",
                "disable_pvt; thermal; flag; 0; 1; not published; true; no source found",
                "dtparam=sd_overclock; clock; MHz; -; -; not published; true; Overlay README",
                "dtparam=sdio_overclock; clock; MHz; -; -; not published; true; Overlay README",
                "dtparam=overclock_50; clock; MHz; -; -; not published; true; Overlay README",
                "dtoverlay=sdhost,overclock_50; clock; MHz; -; -; not published; true; Overlay README",
                "max_usb_current; supply; flag; 0; 1; not published; false; Miscellaneous options",
                "hdmi_enable_4kp60; clock; flag; 0; 1; not published; false; Common options",
                "power_force_3v3_pwm; supply; flag; 0; 1; not published; false; Common options",
                "disable_poe_fan; thermal; flag; 0; 1; 0; false; Boot options",
                "dtparam=fan_temp0; thermal; millidegC; -; -; 50000; false; Frequency management",
                "dtparam=fan_temp3; thermal; millidegC; -; -; 75000; false; Frequency management",
                "dtparam=fan_temp2_hyst; thermal; millidegC; -; -; 5000; false; Overlay README",
                "dtparam=fan_temp1_speed; thermal; pwm; 0; 255; 125; false; Overlay README",
                "dtoverlay=gpio-fan,temp; thermal; millidegC; -; -; 55000; false; Overlay README",
                "dtoverlay=pwm-gpio-fan,fan_temp2_speed; thermal; pwm; 0; 255; 204; false; Overlay README",
                "program_usb_boot_mode; one-time; flag; 0; 1; 0; true; USB mass storage boot",
                "program_pubkey; one-time; flag; 0; 1; 0; false; Secure boot",
                "program_rpiboot_gpio; one-time; pin; 2; 8; not published; false; Boot options",
                "eeprom_write_protect; boot; mode; -1; 1; -1; false; Boot options",
                "set_reboot_arg1; boot; number; 0; 4294967295; not published; false; Boot options",
            })
    void everyKeyOfTheOtherPages(
            String name, String group, String unit, Long min, Long max, String stock, boolean resets, String source) {
        TuningKey key = vocabulary.find(name).orElseThrow();

        assertThat(key.group()).isEqualTo(group);
        assertThat(key.unit()).isEqualTo(unit);
        assertThat(key.min()).isEqualTo(min == null ? OptionalLong.empty() : OptionalLong.of(min));
        assertThat(key.max()).isEqualTo(max == null ? OptionalLong.empty() : OptionalLong.of(max));
        assertThat(key.stock())
                .isEqualTo(
                        stock.equals("not published")
                                ? new StockRule.NotPublished()
                                : new StockRule.Plain(Long.parseLong(stock)));
        assertThat(key.resets()).isEqualTo(resets);
        assertThat(key.citation()).contains(source);
    }

    /** "Boot options", "Legacy overclocking options", "USB mass storage boot" and "Boot flow without boot memory". */
    @Test
    void keysThatBurnABitOfTheChip() {
        assertThat(vocabulary.keys())
                .filteredOn(key -> key.oneTime() == TuningKey.OneTime.FROM_CARD)
                .extracting(TuningKey::key)
                .containsExactlyInAnyOrder("never_over_voltage", "program_usb_boot_mode", "program_usb_boot_timeout");
        assertThat(vocabulary.keys())
                .filteredOn(key -> key.oneTime() == TuningKey.OneTime.OVER_USB)
                .extracting(TuningKey::key)
                .containsExactlyInAnyOrder(
                        "program_pubkey", "revoke_devkey", "program_jtag_lock", "program_rpiboot_gpio");
    }

    @Test
    void aKeyWithoutARowIsTakenForTuningByItsName() {
        for (String name :
                List.of("sdram_lab_timing", "over_voltage_lab", "lab_freq", "lab_freq_min", "dtparam=lab_overclock")) {
            assertThat(vocabulary.find(name)).isEmpty();
            assertThat(vocabulary.findOnCard(name)).as(name).hasValueSatisfying(key -> {
                assertThat(key.key()).isEqualTo(name);
                assertThat(key.published()).isFalse();
                assertThat(key.resets()).isTrue();
            });
        }
        for (String name : List.of("gpu_mem", "kernel", "dtparam=audio", "arm_64bit", "hdmi_pixel_freq_limit")) {
            assertThat(vocabulary.findOnCard(name)).as(name).isEmpty();
        }
    }

    @Test
    void everyKeyHasItsMeaning() {
        KeyMeanings meanings = TuningTables.load().meanings();
        assertThat(vocabulary.keys())
                .allSatisfy(
                        key -> assertThat(meanings.of(key.key())).as(key.key()).isPresent());
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
        // "Common options", commits 18beaa99 and 9038eea7.
        "arm_boost, pi4 rev 1.4+ and pi400, pi4 pi400",
        // "Frequency management", commit 0456a78c: removed on the pi5 family.
        "dvfs, pi4 family, pi4 pi400 cm4 cm4s",
        // "Legacy overclocking options", commit 42e16c72.
        "disable_auto_turbo, pi2 and pi3; others not stated, pi2 pi3",
        // "USB mass storage boot", commit 0456a78c.
        "program_usb_boot_mode, pi2 rev 1.2+ pi3 pi3+ cm3 cm3+, pi2 pi3 pi3+ cm3 cm3+",
    })
    void keysForSomeBoardsOnly(String name, String appliesTo, String boards) {
        TuningKey key = vocabulary.find(name).orElseThrow();

        assertThat(key.appliesTo()).isEqualTo(appliesTo);
        assertThat(key.boards().isEvery()).isFalse();
        assertThat(key.boards().ranges()).extracting(BoardRange::board).containsExactlyInAnyOrder(boards.split(" "));
    }

    @Test
    void everyOtherKeyIsForEveryBoard() {
        assertThat(vocabulary.keys())
                .filteredOn(key -> key.boards().isEvery())
                .allSatisfy(key -> assertThat(key.appliesTo()).isIn("all", "not stated"));
    }

    @Test
    void armBoostStartsAtRevision14OfPi4() {
        BoardSet boards = vocabulary.find("arm_boost").orElseThrow().boards();

        assertThat(boards.contains("pi4", OptionalInt.of(3))).isEqualTo(Truth.FALSE);
        assertThat(boards.contains("pi4", OptionalInt.of(4))).isEqualTo(Truth.TRUE);
        assertThat(boards.contains("pi4", OptionalInt.empty())).isEqualTo(Truth.UNKNOWN);
        assertThat(boards.contains("pi400", OptionalInt.empty())).isEqualTo(Truth.TRUE);
        assertThat(boards.contains("cm4", OptionalInt.empty())).isEqualTo(Truth.FALSE);
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
