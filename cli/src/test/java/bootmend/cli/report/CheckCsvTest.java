package bootmend.cli.report;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.batch.CardResult;
import bootmend.card.PartitionView;
import bootmend.cli.outcome.BatchTotals;
import bootmend.finding.Finding;
import bootmend.finding.Fix;
import bootmend.finding.Place;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.view.CardView;
import bootmend.view.CheckView;
import bootmend.view.ConfigView;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The table of a check, read back by another reader, with text of the worst kind in every field that a card decides.
 * Source: RFC 4180, and "CSV Injection", OWASP community pages.
 */
class CheckCsvTest {

    @Test
    void theTableReadsBackCellForCell() throws IOException {
        List<CSVRecord> rows = table(card("a,b\"c.img", "LAB", finding("config.txt", "over_voltage=8, \"high\"")));
        assertThat(rows).hasSize(1);
        assertThat(rows.get(0).get("card")).isEqualTo("a,b\"c.img");
        assertThat(rows.get(0).get("what")).isEqualTo("over_voltage=8, \"high\"");
        assertThat(rows.get(0).get("severity")).isEqualTo("warning");
        assertThat(rows.get(0).get("path")).isEqualTo("config.txt");
        assertThat(rows.get(0).get("line")).isEqualTo("7");
        assertThat(rows.get(0).get("boards")).isEqualTo("pi4 cm4");
        assertThat(rows.get(0).get("remedy")).startsWith("Do that. Run `bootmend repair");
        assertThat(rows.get(0).get("checked_at")).isEqualTo("2026-03-02T07:45:10Z");
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@sum(a1)", "\t=1", "\r=1"})
    void noCellBeginsAsAFormula(String text) throws IOException {
        List<CSVRecord> rows = table(card("x.img", text, finding(text, text)));
        assertThat(rows).hasSize(1);
        rows.get(0).forEach(cell -> assertThat(cell).doesNotContainPattern("^[=+\\-@\t\r]"));
        assertThat(rows.get(0).get("label")).startsWith("'");
        assertThat(rows.get(0).get("what")).startsWith("'").endsWith(text.strip());
    }

    @Test
    void aCardWithoutFindingAndOneThatFailedHaveTheirRows() throws IOException {
        List<CSVRecord> rows = table(card("fine.img", "LAB"), failed());
        assertThat(rows).extracting(row -> row.get("severity")).containsExactly("none", "error");
        assertThat(rows.get(1).get("what")).isEqualTo("it is <empty>");
    }

    @SafeVarargs
    private static List<CSVRecord> table(CardResult<CheckView>... cards) throws IOException {
        StringBuilder text = new StringBuilder();
        CsvReport<CardResult<CheckView>> csv = new CsvReport<>(text, CheckRows.HEADER, new CheckRows(Purpose.SHIP)::of);
        for (CardResult<CheckView> card : cards) {
            csv.add(card);
        }
        csv.end(new BatchTotals());
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.builder()
                .setReader(new StringReader(text.toString()))
                .setFormat(format)
                .get()) {
            return parser.getRecords();
        }
    }

    private static Finding finding(String path, String what) {
        return new Finding(
                new Rule(
                        "some-rule",
                        Rule.always(Severity.WARNING),
                        Fix.DECISION,
                        "It means this.",
                        "Do that.",
                        List.of(NextStep.Plain.REPAIR_CARD),
                        "somewhere"),
                Place.line(path, 7),
                what,
                List.of("pi4", "cm4"),
                Fix.DECISION);
    }

    private static CardResult<CheckView> card(String name, String label, Finding... findings) {
        PartitionView partition =
                new PartitionView("MBR", 1, 8192, 524288, 512, "first", "FAT32", label, "5C01-AB01", 2048);
        CardView card = new CardView(
                name,
                "image file",
                1 << 28,
                partition,
                Optional.of(new ConfigView("config.txt", new byte[565])),
                Optional.empty(),
                List.of(),
                List.of());
        return result(
                name,
                Optional.of(new CheckView(
                        card,
                        Purpose.SHIP,
                        List.of("pi3", "pi4", "cm4"),
                        false,
                        List.of(findings),
                        List.of(),
                        Instant.parse("2026-03-02T07:45:10Z"))),
                Optional.empty());
    }

    private static CardResult<CheckView> failed() {
        return result(
                "bad.img", Optional.empty(), Optional.of(CardException.unreadable("it is <empty>", "Look again.")));
    }

    private static CardResult<CheckView> result(String name, Optional<CheckView> view, Optional<CardException> error) {
        return new CardResult<>(Path.of(name), true, view, error, Duration.ZERO);
    }
}
