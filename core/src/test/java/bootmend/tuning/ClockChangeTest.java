package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bootmend.config.Truth;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/**
 * Clocks and power against stock. Stock values: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446.
 * Power: P ~ C V^2 f, "CMOS VLSI Design", 4th edition, chapter 5; the figures are worked out by hand.
 */
class ClockChangeTest {

    private final TuningTables tables = TuningTables.load();

    @Test
    void aClockInPercentOfStock() {
        assertThat(number(ClockChange.percent(new Figure.Value(2000), stock("arm_freq", "pi4", 1, Truth.FALSE))))
                .isCloseTo(33.333, within(0.001));
        assertThat(number(ClockChange.percent(new Figure.Value(600), stock("arm_freq", "pi3", 2, Truth.FALSE))))
                .isCloseTo(-50, within(1e-9));
    }

    @Test
    void theBoostedColumnCountsWhereItIsInForce() {
        assertThat(stock("arm_freq", "pi4", 4, Truth.TRUE)).isEqualTo(new Figure.Value(1800));
        assertThat(stock("arm_freq", "pi4", 4, Truth.FALSE)).isEqualTo(new Figure.Value(1500));
        assertThat(stock("arm_freq", "pi4", 4, Truth.UNKNOWN))
                .isEqualTo(new Figure.DependsOn("whether arm_boost is 1"));
        assertThat(stock("arm_freq", "pi4", 3, Truth.TRUE)).isEqualTo(new Figure.Value(1500));
    }

    @Test
    void withoutARevisionTwoColumnsDependOnIt() {
        Figure unsure = stock("arm_freq", "pi4", -1, Truth.TRUE);

        assertThat(unsure).isEqualTo(new Figure.DependsOn("the revision of the board"));
        assertThat(ClockChange.percent(new Figure.Value(2000), unsure)).isEqualTo(unsure);
        assertThat(stock("arm_freq", "pi4", -1, Truth.FALSE)).isEqualTo(new Figure.Value(1500));
        assertThat(stock("core_freq", "pi4", -1, Truth.UNKNOWN)).isEqualTo(new Figure.Value(500));
    }

    @Test
    void whatIsNotPublishedStaysSo() {
        Figure missing = stock("arm_freq", "cm5", -1, Truth.FALSE);

        assertThat(missing).isEqualTo(new Figure.NotPublished("no stock value of arm_freq on cm5"));
        assertThat(ClockChange.percent(new Figure.Value(2000), missing)).isEqualTo(missing);
        assertThat(ClockChange.percent(new Figure.DependsOn("x"), missing)).isEqualTo(missing);
        assertThat(stock("h264_freq", "pi5", -1, Truth.FALSE))
                .isEqualTo(new Figure.NotPublished("h264_freq does nothing on pi5"));
        assertThat(stock("arm_boost", "pi4", 4, Truth.FALSE)).isInstanceOf(Figure.NotPublished.class);
    }

    @Test
    void aKeyWithOneStockValueHasItOnEveryBoard() {
        assertThat(stock("temp_limit", "cm5", -1, Truth.UNKNOWN)).isEqualTo(new Figure.Value(85));
        assertThat(stock("over_voltage", "pi1", -1, Truth.UNKNOWN)).isEqualTo(new Figure.Value(0));
    }

    @Test
    void powerAsStockIsOne() {
        assertThat(number(power(1500, 1500, 1.35, 1.35))).isCloseTo(1, within(1e-12));
    }

    @Test
    void powerGrowsWithTheClockAndWithTheSquareOfTheVoltage() {
        assertThat(number(power(3000, 1500, 1.35, 1.35))).isCloseTo(2, within(1e-12));
        assertThat(number(power(1500, 1500, 2.7, 1.35))).isCloseTo(4, within(1e-12));
        // 2000/1500 = 1.33333; (1.5/1.35)^2 = 1.23457; together 1.64609
        assertThat(number(power(2000, 1500, 1.5, 1.35))).isCloseTo(1.64609, within(1e-5));
    }

    @Test
    void powerWithoutAVoltageIsNotGuessed() {
        Figure missing = new Figure.NotPublished("volts of over_voltage on cm1");

        assertThat(ClockChange.powerRatio(new Figure.Value(800), new Figure.Value(700), missing, missing))
                .isEqualTo(missing);
    }

    private static Figure power(double clock, double stockClock, double volts, double stockVolts) {
        return ClockChange.powerRatio(
                new Figure.Value(clock),
                new Figure.Value(stockClock),
                new Figure.Value(volts),
                new Figure.Value(stockVolts));
    }

    private static double number(Figure figure) {
        return ((Figure.Value) figure).value();
    }

    private Figure stock(String key, String board, int revision, Truth boosted) {
        OptionalInt number = revision < 0 ? OptionalInt.empty() : OptionalInt.of(revision);
        return tables.stock().figure(tables.vocabulary().find(key).orElseThrow(), board, number, boosted);
    }
}
