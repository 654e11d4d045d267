package bootmend.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AmountTest {

    @ParameterizedTest
    @CsvSource({
        "0, 0 bytes",
        "1023, 1023 bytes",
        "1024, 1 KiB",
        "1536, 1.5 KiB",
        "268435456, 256 MiB",
        "31914983424, 29.7 GiB",
        "1099511627776, 1 TiB",
        "9223372036854775807, 8388608 TiB"
    })
    void bytesAreSaidInTheLargestUnitThatTheyFill(long bytes, String words) {
        assertThat(Amount.size(bytes)).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({"0, 0 lines", "1, 1 line", "2, 2 lines"})
    void oneThingIsSaidInTheSingular(int n, String words) {
        assertThat(Amount.count(n, "line")).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({
        "2000, MHz, 2000 MHz",
        "1, step, 1 step",
        "6, step, 6 steps",
        "-2, step, -2 steps",
        "1, flag, 1",
        "high, MHz, high"
    })
    void aValueHasItsUnitWhereItIsANumber(String value, String unit, String words) {
        assertThat(Amount.of(value, unit)).isEqualTo(words);
    }

    @Test
    void percentAndVoltsAreRounded() {
        assertThat(Amount.percent(List.of(33.4, 33.1, -0.2))).isEqualTo("+33 % or +0 %");
        assertThat(Amount.volts(1.35, false)).isEqualTo("1.35 V");
        assertThat(Amount.volts(0.025, true)).isEqualTo("+0.025 V");
    }
}
