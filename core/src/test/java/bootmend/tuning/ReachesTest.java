package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How far values are published to reach; each with its source. */
class ReachesTest {

    private final Reaches reaches = TuningTables.load().reaches();

    @ParameterizedTest
    @CsvSource({
        // firmware repository, issue 815, an engineer, May 2017
        "arm_freq, pi3, HANGS, 1600, 1601",
        // firmware repository, issue 1537, a user's report
        "arm_freq, pi4, REPORTED, 2500, 2501",
        // Boot firmware release notes for BCM2712, commit 86759b04, entry 2023-12-06
        "arm_freq_min, pi5, HELD, 200, 199",
        // firmware repository, issue 1290, an engineer, January 2020; 550 from "Overclocking options", commit 6e5f9446
        "core_freq, pi4, UNSUPPORTED, 550, 551",
        "v3d_freq, pi4, UNSUPPORTED, 500, 501",
        // documentation repository, issue 1772: 0.83 to 1.1 V; firmware repository, issue 1876: 0.72 to 1.0 V
        "over_voltage_delta, cm4, HELD, 270000, 270001",
        "over_voltage_delta, cm5, HELD, -280000, -280001",
    })
    void everyLimit(String key, String board, Reach.Kind kind, long inside, long beyond) {
        assertThat(reaches.of(key, board)).singleElement().satisfies(reach -> {
            assertThat(reach.kind()).isEqualTo(kind);
            assertThat(reach.isPassedBy(inside)).isFalse();
            assertThat(reach.isPassedBy(beyond)).isTrue();
        });
    }

    /** Boot firmware release notes for BCM2712, commit 86759b04, entry 2024-04-05: above 3000 takes effect. */
    @Test
    void noCeilingIsPublishedForTheClockOfPi5() {
        assertThat(reaches.of("arm_freq", "pi5")).isEmpty();
        assertThat(reaches.all()).hasSize(7);
    }
}
