package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source: the page on the firmware query command, table of throttle bits; values from memory and public copies. */
class ThrottleBitsTableTest {

    private final ThrottleBits bits = TuningTables.load().throttleBits();

    @ParameterizedTest
    @CsvSource({
        "0x1, supply under-voltage now",
        "0x2, CPU clock capped now",
        "0x4, throttled now",
        "0x8, soft temperature limit active now",
        "0x10000, supply under-voltage since boot",
        "0x20000, CPU clock capped since boot",
        "0x40000, throttled since boot",
        "0x80000, soft temperature limit since boot",
    })
    void everyBit(String mask, String meaning) {
        long report = Long.decode(mask);

        assertThat(bits.decode(report)).extracting(ThrottleBit::meaning).containsExactly(meaning);
        assertThat(bits.unknown(report)).isZero();
    }

    @Test
    void aReportOfSeveralBits() {
        assertThat(bits.decode(0x50005)).extracting(ThrottleBit::bit).containsExactly(0, 2, 16, 18);
        assertThat(bits.decode(0)).isEmpty();
    }

    @Test
    void bitsWithoutPublishedMeaningAreHandedBack() {
        assertThat(bits.unknown(0x100010)).isEqualTo(0x100010);
        assertThat(bits.unknown(0x100011)).isEqualTo(0x100010);
        assertThat(bits.all()).hasSize(8);
    }
}
