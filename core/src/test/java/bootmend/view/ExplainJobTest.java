package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import bootmend.CardException;
import bootmend.check.RuleBook;
import bootmend.finding.Rule;
import bootmend.tuning.Board;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Explanations; the tables behind them have their own tests against the published sources. */
class ExplainJobTest {

    private final ExplainJob job = new ExplainJob(Workplace.ofThisComputer(Path.of("nowhere")));

    @ParameterizedTest
    @MethodSource("keys")
    void everyKeyHasAMeaningStockAndCautions(String name) throws CardException {
        KeyExplanation key = (KeyExplanation) job.run(name);

        assertThat(key.meaning()).endsWith(".");
        assertThat(key.stock().isEmpty()).isEqualTo(name.equals("gpu_freq"));
        assertThat(key.cautions()).first().extracting(CautionView::id).isEqualTo("limits");
        assertThat(key.source()).isNotEmpty();
    }

    static Stream<String> keys() {
        return TuningTables.load().vocabulary().keys().stream().map(TuningKey::key);
    }

    // "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446, table of stock values.
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "arm_freq; pi4; 1500 up to revision 1.3; 1500, or 1800 with arm_boost=1, from revision 1.4",
                "core_freq; pi4; 500;",
                "arm_freq; pi1; 700;",
                "arm_freq; cm5; not published;",
                "h264_freq; pi5; does nothing there;",
                "sdram_freq; pi4; not read;",
                "temp_limit; pi0; 85;",
                "arm_boost; pi3; not read;",
            })
    void aKeyNamesItsStockOnEachBoard(String key, String board, String stock, String more) throws CardException {
        String expected = more == null ? stock : stock + "; " + more;

        assertThat(((KeyExplanation) job.run(key)).stock())
                .contains(new KeyExplanation.StockOnBoard(board, expected))
                .hasSize(18);
    }

    @Test
    void aKeyIsFoundWhateverItsCase() throws CardException {
        assertThat(((KeyExplanation) job.run("Over_Voltage")).min()).hasValue(-16);
    }

    @ParameterizedTest
    @MethodSource("boards")
    void everyBoardIsExplained(String id) throws CardException {
        BoardExplanation board = (BoardExplanation) job.run(id);

        assertThat(board.filters()).first().isEqualTo("[" + id + "]");
        assertThat(board.bootFiles()).isNotEmpty();
        assertThat(board.sources()).hasSize(5);
    }

    static Stream<String> boards() {
        return TuningTables.load().boards().all().stream().map(Board::id);
    }

    @Test
    void aBoardNamesItsVolts() throws CardException {
        // "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446: over_voltage on pi1 and the others.
        assertThat(((BoardExplanation) job.run("pi1")).volts())
                .contains(new BoardExplanation.VoltsView("over_voltage", -16, 0.8, 1.2, 8, 1.4, 0.025));
        // Documentation repository, issue 1772: steps count from the chip's own default, which differs.
        assertThat(((BoardExplanation) job.run("pi4")).volts()).isEmpty();
        assertThat(((KeyExplanation) job.run("over_voltage")).note()).contains("differs from chip to chip");
    }

    @Test
    void stockThatHangsOnTheFirmwareSaysSo() throws CardException {
        // Boot firmware release notes for BCM2712, commit 86759b04, entry 2024-11-12.
        assertThat(((KeyExplanation) job.run("initial_turbo")).stock())
                .contains(
                        new KeyExplanation.StockOnBoard("pi4", "0"),
                        new KeyExplanation.StockOnBoard("pi5", "0, or 60 with boot firmware of 2024-11-12 or later"));
    }

    @Test
    void aParameterIsFoundByItsName() throws CardException {
        assertThat(((KeyExplanation) job.run("sd_overclock")).key()).isEqualTo("dtparam=sd_overclock");
        assertThat(((KeyExplanation) job.run("POWER_OFF_ON_HALT")).boards()).contains("not config.txt");
    }

    @Test
    void aBoardThatCanVoidItsWarrantyWarns() throws CardException {
        assertThat(((BoardExplanation) job.run("pi3")).cautions())
                .extracting(CautionView::id)
                .contains("warranty");
        // "Revision codes", revision-codes.adoc, commit 0456a78c, footnote.
        assertThat(((BoardExplanation) job.run("pi4")).cautions())
                .extracting(CautionView::id)
                .doesNotContain("warranty");
        assertThat(((BoardExplanation) job.run("pi4")).warrantyBit()).isEqualTo("never set");
    }

    @ParameterizedTest
    @CsvSource({"0x50005", "throttled=0x50005", "0X00050005"})
    void aThrottleReportIsReadBitByBit(String word) throws CardException {
        ThrottleExplanation report = (ThrottleExplanation) job.run(word);

        // Values from memory and from several public copies that agree.
        assertThat(report.bits()).extracting(ThrottleExplanation.BitView::bit).containsExactly(0, 2, 16, 18);
        assertThat(report.bits().get(0).meaning()).isEqualTo("supply under-voltage now");
        assertThat(report.mask()).isEqualTo("0x50005");
        assertThat(report.unknown()).isEqualTo("0x0");
    }

    @Test
    void bitsWithoutMeaningAreNotPassedOver() throws CardException {
        ThrottleExplanation report = (ThrottleExplanation) job.run("0x80000010");

        assertThat(report.bits()).isEmpty();
        assertThat(report.unknown()).isEqualTo("0x80000010");
    }

    @ParameterizedTest
    @MethodSource("rules")
    void everyRuleIsExplained(String id) throws CardException {
        RuleExplanation rule = (RuleExplanation) job.run(id);

        assertThat(rule.rule()).isEqualTo(id);
        assertThat(rule.severities()).hasSize(3).first().asString().startsWith("ship: ");
        assertThat(rule.meaning()).endsWith(".");
        assertThat(rule.remedy()).endsWith(".");
        assertThat(rule.source()).isNotEmpty();
    }

    static Stream<String> rules() {
        return RuleBook.load(TuningTables.load().sources()).all().stream().map(Rule::id);
    }

    @ParameterizedTest
    @CsvSource({
        "arm_frq, arm_freq",
        "overvoltage, over_voltage",
        "turbo, force_turbo",
        "warranty-bti, warranty-bit",
        "pi44, pi4"
    })
    void anUnknownWordIsToldNearOnes(String word, String near) {
        assertThat(refused(word).remedy()).startsWith("Did you mean ").contains(near);
    }

    @ParameterizedTest
    @CsvSource({"zzzzzzz", "''", "0x123456789"})
    void aWordThatIsNearNothingIsToldWhatThereIs(String word) {
        assertThat(refused(word).remedy()).startsWith("Give a tuning key");
    }

    @Test
    void aVeryLongWordIsAnsweredToo() {
        assertThat(refused("x".repeat(1 << 20)).kind()).isEqualTo(CardException.Kind.USAGE);
    }

    private CardException refused(String word) {
        CardException error = catchThrowableOfType(CardException.class, () -> job.run(word));
        assertThat(error.kind()).isEqualTo(CardException.Kind.USAGE);
        return error;
    }
}
