package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821. */
class TuningNumberTest {

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "2000, 2000",
        "-16, -16",
        "010, 10",
        "0x7d0, 2000",
        "0X7D0, 2000",
        "0xffffffff, 4294967295",
        "9999999999, 9999999999"
    })
    void decimalOrHexadecimal(String text, long number) {
        assertThat(TuningNumber.parse(text)).hasValue(number);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " 2000",
                "2000 ",
                "2000 # lab",
                "\"2000\"",
                "2e3",
                "1,8",
                "+2",
                "0x",
                "-0x10",
                "--1",
                "0x123456789",
                "12345678901",
                "٣"
            })
    void anythingElseIsNoNumber(String text) {
        assertThat(TuningNumber.parse(text)).isEmpty();
    }
}
