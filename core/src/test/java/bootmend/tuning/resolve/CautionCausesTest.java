package bootmend.tuning.resolve;

import static bootmend.tuning.resolve.RuleCase.rule;
import static org.assertj.core.api.Assertions.assertThat;

import bootmend.tuning.Caution;
import bootmend.tuning.TuningTables;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which settings call for which caution. */
class CautionCausesTest {

    private static final TuningTables TABLES = TuningTables.load();

    @Test
    void nothingTunedCallsForNothing() {
        assertThat(cautions("pi4", "dtparam=spi=on")).isEmpty();
        assertThat(cautions("pi4", "[pi5]", "arm_freq=3000")).isEmpty();
    }

    @Test
    void anIgnoredKeyCallsForNothing() {
        assertThat(cautions("pi4", "sdram_freq=3300")).isEmpty();
    }

    @Test
    void aClockAboveStockCallsForHeatSupplyAndData() {
        assertThat(cautions("pi4", "arm_freq=2000")).containsExactly("limits", "heat", "supply", "data");
    }

    @Test
    void aClockBelowStockCallsForTheMakersLimitsAlone() {
        assertThat(cautions("pi4", "arm_freq=1200")).containsExactly("limits");
    }

    @Test
    void tooLowAVoltageEndangersData() {
        assertThat(cautions("pi4", "over_voltage=-2")).containsExactly("limits", "data");
    }

    @Test
    void aStockValueThatIsNotPublishedCountsAsPassed() {
        assertThat(cautions("cm5", "arm_freq=1000")).contains("heat");
    }

    // "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446: force_turbo with over_voltage.
    @Test
    void turboWithVoltageEndangersTheWarranty() {
        assertThat(cautions("pi3", "force_turbo=1", "over_voltage=2")).contains("warranty");
        assertThat(cautions("pi3", "force_turbo=1", "over_voltage_sdram=2")).contains("warranty");
        assertThat(cautions("pi3", "force_turbo=1")).doesNotContain("warranty");
        assertThat(cautions("pi3", "force_turbo=1", "over_voltage=-2")).doesNotContain("warranty");
        assertThat(cautions("pi3", "force_turbo=0", "over_voltage=2")).doesNotContain("warranty");
    }

    // "Revision codes", revision-codes.adoc, commit 0456a78c, footnote.
    @Test
    void pi4NeverSetsTheWarrantyBit() {
        assertThat(cautions("pi4", "force_turbo=1", "over_voltage=2")).doesNotContain("warranty");
    }

    @Test
    void whatMayCountCallsForCaution() {
        assertThat(cautions("pi3", "over_voltage=2", "[gpio4=1]", "force_turbo=1"))
                .contains("warranty");
    }

    private static List<String> cautions(String board, String... config) {
        return TABLES
                .cautions()
                .calledForBy(new CautionCauses(TABLES)
                        .of(rule("").on(board).reads(config).resolve()))
                .stream()
                .map(Caution::id)
                .toList();
    }
}
