package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: "Conditional filters", config_txt/conditional.adoc, commits 23cc7a36 and 3e67d54c. */
class FilterParserTest {

    private static final long ALL_BITS = 0xFFFF_FFFFL;

    private final FilterParser parser = new FilterParser(Set.of("pi4", "pi3+"));

    @Test
    void words() {
        assertThat(parser.parse("[all]")).isEqualTo(new Filter.All());
        assertThat(parser.parse("[none]")).isEqualTo(new Filter.None());
        assertThat(parser.parse("[tryboot]")).isEqualTo(new Filter.Tryboot());
        assertThat(parser.parse("[pi4]")).isEqualTo(new Filter.Model("pi4"));
        assertThat(parser.parse("[pi3+]")).isEqualTo(new Filter.Model("pi3+"));
    }

    @Test
    void boardTypes() {
        assertThat(parser.parse("[board-type=0x14]")).isEqualTo(new Filter.BoardType(0x14));
        assertThat(parser.parse("[board-type=20]")).isEqualTo(new Filter.BoardType(20));
    }

    @Test
    void serialNumbers() {
        assertThat(parser.parse("[0x12345678]")).isEqualTo(new Filter.Serial(0x12345678L));
        assertThat(parser.parse("[0xffffFFFF]")).isEqualTo(new Filter.Serial(ALL_BITS));
    }

    @Test
    void pinsMonitorsAndPorts() {
        assertThat(parser.parse("[gpio4=1]")).isEqualTo(new Filter.Pin(4, true));
        assertThat(parser.parse("[gpio27=0]")).isEqualTo(new Filter.Pin(27, false));
        assertThat(parser.parse("[EDID=LAB-WALL 2]")).isEqualTo(new Filter.Monitor("LAB-WALL 2"));
        assertThat(parser.parse("[HDMI:1]")).isEqualTo(new Filter.Hdmi(1));
    }

    @Test
    void bootVariables() {
        assertThat(parser.parse("[partition=2]"))
                .isEqualTo(new Filter.BootVariable("partition", ALL_BITS, Filter.Comparison.EQUAL, 2));
        assertThat(parser.parse("[boot_arg1&0xF0]"))
                .isEqualTo(new Filter.BootVariable("boot_arg1", 0xF0, Filter.Comparison.NOT_ZERO, 0));
        assertThat(parser.parse("[cust_otp7&0xF0=0x10]"))
                .isEqualTo(new Filter.BootVariable("cust_otp7", 0xF0, Filter.Comparison.EQUAL, 0x10));
        assertThat(parser.parse("[boot_count<3]"))
                .isEqualTo(new Filter.BootVariable("boot_count", ALL_BITS, Filter.Comparison.LESS, 3));
        assertThat(parser.parse("[bootvar0>0x10]"))
                .isEqualTo(new Filter.BootVariable("bootvar0", ALL_BITS, Filter.Comparison.GREATER, 16));
        assertThat(parser.parse("[boot_partition=010]"))
                .isEqualTo(new Filter.BootVariable("boot_partition", ALL_BITS, Filter.Comparison.EQUAL, 10));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "[PI4]",
                "[pi9]",
                "[ALL]",
                "[pi4",
                "pi4]",
                "[",
                "[]",
                "[[pi4]]",
                "[pi4] x",
                "[ pi4]",
                "[gpio4]",
                "[gpio4=2]",
                "[gpio300=1]",
                "[board-type=]",
                "[board-type=0x100]",
                "[0x]",
                "[0x123456789]",
                "[EDID=]",
                "[HDMI:2]",
                "[partition]",
                "[partition=]",
                "[partition&1<2]",
                "[partition=4294967296]",
                "[partition=99999999999]",
                "[cust_otp8=1]",
                "[boot_arg2=1]",
                "[partition=-1]"
            })
    void anythingElseIsUnknown(String raw) {
        assertThat(parser.parse(raw)).isEqualTo(new Filter.Unknown(raw));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "[all]",
                "[none]",
                "[tryboot]",
                "[pi4]",
                "[board-type=0x14]",
                "[0x12345678]",
                "[gpio4=1]",
                "[gpio4=0]",
                "[EDID=LAB-WALL]",
                "[HDMI:0]",
                "[partition=2]",
                "[boot_arg1&0xf0]",
                "[cust_otp0&0xf0=16]",
                "[boot_count<3]",
                "[boot_count>3]",
                "[what is this]"
            })
    void aFilterIsWrittenAsItWasRead(String raw) {
        assertThat(parser.parse(raw).text()).isEqualTo(raw);
    }

    @Test
    void anExpressionHoldsAsItsSignSays() {
        Filter.BootVariable masked = (Filter.BootVariable) parser.parse("[boot_arg1&0xF0=0x10]");
        assertThat(masked.holdsFor(0x1F)).isTrue();
        assertThat(masked.holdsFor(0x2F)).isFalse();
        Filter.BootVariable notZero = (Filter.BootVariable) parser.parse("[boot_arg1&0xF0]");
        assertThat(notZero.holdsFor(0x80)).isTrue();
        assertThat(notZero.holdsFor(0x0F)).isFalse();
        Filter.BootVariable less = (Filter.BootVariable) parser.parse("[boot_count<3]");
        assertThat(less.holdsFor(2)).isTrue();
        assertThat(less.holdsFor(3)).isFalse();
        Filter.BootVariable greater = (Filter.BootVariable) parser.parse("[boot_count>3]");
        assertThat(greater.holdsFor(3)).isFalse();
        assertThat(greater.holdsFor(ALL_BITS)).isTrue();
    }
}
