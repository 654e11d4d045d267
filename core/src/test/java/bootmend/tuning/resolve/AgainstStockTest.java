package bootmend.tuning.resolve;

import static bootmend.tuning.resolve.RuleCase.code;
import static bootmend.tuning.resolve.RuleCase.rule;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bootmend.tuning.Figure;
import bootmend.tuning.TuningTables;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Numbers against stock; stock values and volts from "Overclocking options", config_txt/overclocking.adoc, commit
 * 6e5f9446; the power law from "CMOS VLSI Design", 4th edition, chapter 5; each number worked out by hand.
 */
class AgainstStockTest {

    private static final TuningTables TABLES = TuningTables.load();

    @Test
    void aClockIsGivenInPercentAboveStock() {
        // 1800 / 1500 and 560 / 700
        assertThat(values(on("pi4", "arm_freq=1800").percent("arm_freq"))).containsExactly(20.0);
        assertThat(values(on("pi1", "arm_freq=560").percent("arm_freq"))).containsExactly(-20.0);
    }

    @Test
    void withoutARevisionBothColumnsAreGiven() {
        Case pi4 = on("pi4", "arm_freq=1800", "arm_boost=1");

        assertThat(pi4.stock("arm_freq")).containsExactly(new Figure.Value(1500), new Figure.Value(1800));
        assertThat(values(pi4.percent("arm_freq"))).containsExactly(20.0, 0.0);
    }

    @Test
    void theRevisionPicksTheColumn() {
        // c03111 is revision 1, d03114 revision 4 ("Revision codes", revision-codes.adoc, commit 0456a78c).
        assertThat(new Case(rule("").on(code("c03111")).reads("arm_boost=1")).stock("arm_freq"))
                .containsExactly(new Figure.Value(1500));
        assertThat(new Case(rule("").on(code("d03114")).reads("arm_boost=1")).stock("arm_freq"))
                .containsExactly(new Figure.Value(1800));
    }

    @Test
    void aStockValueThatIsNotPublishedStaysSo() {
        assertThat(on("cm5", "arm_freq=2600").percent("arm_freq")).first().isInstanceOf(Figure.NotPublished.class);
        assertThat(on("cm5", "arm_freq=2600", "over_voltage=2").cpuPower())
                .first()
                .isInstanceOf(Figure.NotPublished.class);
    }

    @Test
    void stepsBecomeVolts() {
        // 1.2 V + 6 x 0.025 V on pi1
        assertThat(on("pi1", "over_voltage=6").volts("over_voltage")).isEqualTo(new Figure.Value(1.35));
    }

    /** Documentation repository, issue 1772: steps count from the chip's own default, which differs chip by chip. */
    @Test
    void stepsOnNewerBoardsGiveNeitherVoltsNorPower() {
        for (String board : List.of("pi4", "pi400", "cm4", "pi5", "cm5", "pi3")) {
            Case tuned = on(board, "over_voltage=6", "arm_freq=2000");
            assertThat(tuned.volts("over_voltage")).as(board).isInstanceOf(Figure.NotPublished.class);
            assertThat(tuned.cpuPower()).as(board).allMatch(Figure.NotPublished.class::isInstance);
        }
    }

    @Test
    void aVoltageAtStockIsNoChange() {
        assertThat(on("pi4", "over_voltage=0").cpuPower()).isEmpty();
        assertThat(on("pi4", "over_voltage=0", "arm_freq=1500").cpuPower()).isEmpty();
    }

    @Test
    void microvoltsBecomeAChangeInVolts() {
        assertThat(on("pi5", "over_voltage_delta=50000").volts("over_voltage_delta"))
                .isEqualTo(new Figure.Value(0.05));
    }

    @Test
    void anIgnoredKeyHasNoNumbers() {
        assertThat(on("pi4", "sdram_freq=3300").percent("sdram_freq")).isEmpty();
    }

    @Test
    void powerGrowsWithTheSquareOfTheVoltage() {
        // (1.35 / 1.2)^2 x 1000 / 700 = 1.8080
        assertThat(values(on("pi1", "arm_freq=1000", "over_voltage=6").cpuPower())
                        .get(0))
                .isCloseTo(1.8080, within(0.0001));
        // (1.35 / 1.2)^2 = 1.2656, the clock at stock
        assertThat(values(on("pi1", "over_voltage=6").cpuPower()).get(0)).isCloseTo(1.2656, within(0.0001));
    }

    @Test
    void automaticVoltageLeavesPowerUnknown() {
        assertThat(on("pi4", "arm_freq=2000").cpuPower()).first().isInstanceOf(Figure.NotPublished.class);
        assertThat(on("pi4", "arm_freq=2000", "over_voltage=2", "over_voltage_delta=10000")
                        .cpuPower())
                .first()
                .isInstanceOf(Figure.NotPublished.class);
    }

    @Test
    void whatHangsOnAPinLeavesPowerUnknown() {
        assertThat(on("pi1", "over_voltage=6", "[gpio4=1]", "arm_freq=1000").cpuPower())
                .containsExactly(new Figure.DependsOn("the level of pin 4"));
    }

    @Test
    void untunedCpuHasNoPowerLine() {
        assertThat(on("pi4", "gpu_freq=600").cpuPower()).isEmpty();
    }

    private static Case on(String board, String... config) {
        return new Case(rule("").on(board).reads(config));
    }

    private static List<Double> values(List<Figure> figures) {
        return figures.stream()
                .map(figure -> Math.round(((Figure.Value) figure).value() * 1e6) / 1e6)
                .toList();
    }

    /** A config file on a board, with its numbers. */
    private record Case(Resolution resolution, AgainstStock numbers) {

        Case(RuleCase rule) {
            this(rule.resolve());
        }

        private Case(Resolution resolution) {
            this(resolution, new AgainstStock(TABLES, resolution));
        }

        List<Figure> stock(String key) {
            return numbers.stock(TABLES.vocabulary().find(key).orElseThrow());
        }

        List<Figure> percent(String key) {
            return numbers.percent(resolution.tuning(key).orElseThrow());
        }

        Figure volts(String key) {
            return numbers.volts(resolution.tuning(key).orElseThrow()).orElseThrow();
        }

        List<Figure> cpuPower() {
            return numbers.cpuPower();
        }
    }
}
