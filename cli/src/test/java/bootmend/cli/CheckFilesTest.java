package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.check.Finding;
import bootmend.check.Place;
import bootmend.check.Purpose;
import bootmend.check.Severity;
import bootmend.job.CardView;
import bootmend.job.CheckView;
import bootmend.job.ConfigView;
import bootmend.job.PartitionView;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The table and the page of a check, read back by other readers, with text of the worst kind in every field that a card
 * decides. Table: RFC 4180, and "CSV Injection", OWASP community pages. Page: the HTML reader is jsoup.
 */
class CheckFilesTest {

    private static final String HOSTILE = "</dd><script>alert(1)</script>\"'&amp;<!--\u001b[2J\u202e";

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

    @Test
    void hostileTextStaysTextOnThePage() throws IOException {
        Document page = page(card(HOSTILE, HOSTILE, finding(HOSTILE, HOSTILE)), failed());
        assertThat(page.select("script, iframe, img, link, a")).isEmpty();
        assertThat(page.select("article")).hasSize(2);
        String shown = "</dd><script>alert(1)</script>\"'&amp;<!--\\x1B[2J\\u{202E}";
        assertThat(page.selectFirst("h1").text()).isEqualTo(shown);
        assertThat(page.selectFirst("li").text()).isEqualTo(shown + " line 7: " + shown + " [pi4 cm4]");
        assertThat(field(page, "Label")).isEqualTo(shown);
        assertThat(page.select("article").get(1).text()).contains("it is <empty>");
    }

    @Test
    void thePageHasWhatAPackingSlipNeeds() throws IOException {
        Document page = page(card("lab-07.img", "LABBOOT", finding("config.txt", "arm_freq=2000 is active.")));
        assertThat(field(page, "Label")).isEqualTo("LABBOOT");
        assertThat(field(page, "Serial")).isEqualTo("5C01-AB01");
        assertThat(field(page, "Config file")).contains("config.txt, 565 bytes")
                .contains("sha256 5635520a268aed816a21b0ba7d3292f3098ff32942e88de607a6ffb111fe2385");
        assertThat(field(page, "Checked")).isEqualTo("to ship, 2026-03-02 07:45 UTC+00:00");
        assertThat(field(page, "Boards")).isEqualTo("pi3 pi4 cm4 (every board that it can boot)");
        assertThat(page.selectFirst(".verdict").text()).startsWith("Ready to ship").contains("1 warning");
        assertThat(page.selectFirst("section.warning").text()).contains("some-rule", "config.txt line 7",
                "It means this.", "Do that.", "Source: somewhere");
        assertThat(page.select(".sign div")).extracting(Element::text).contains("Checked by", "Date");
    }

    @Test
    void thePageLoadsNothingFromAnywhere() throws IOException {
        Document page = page(card("lab-07.img", ""));
        assertThat(page.select("[src], [href]")).isEmpty();
        assertThat(page.selectFirst("style").data()).doesNotContain("url(", "@import");
        assertThat(field(page, "Label")).isEqualTo("none");
    }

    private static List<CSVRecord> table(CheckedCard... cards) throws IOException {
        StringBuilder text = new StringBuilder();
        try (CheckCsv csv = new CheckCsv(text, Purpose.SHIP)) {
            for (CheckedCard card : cards) {
                csv.add(card);
            }
        }
        CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
        try (CSVParser parser = CSVParser.builder().setReader(new StringReader(text.toString())).setFormat(format)
                .get()) {
            return parser.getRecords();
        }
    }

    private static Document page(CheckedCard... cards) throws IOException {
        StringWriter text = new StringWriter();
        try (CheckHtml html = new CheckHtml(text, Purpose.SHIP, ZoneOffset.UTC)) {
            for (CheckedCard card : cards) {
                html.add(card);
            }
        }
        return Jsoup.parse(text.toString());
    }

    private static String field(Document page, String name) {
        return page.select("dt").stream().filter(term -> term.text().equals(name)).findFirst().orElseThrow()
                .nextElementSibling().text();
    }

    private static Finding finding(String path, String what) {
        return new Finding("some-rule", Severity.WARNING, new Place(path, OptionalInt.of(7)), what,
                List.of("pi4", "cm4"), "It means this.", "Do that.", "somewhere");
    }

    private static CheckedCard card(String name, String label, Finding... findings) {
        PartitionView partition = new PartitionView("MBR", 1, 8192, 524288, 512, "first", "FAT32", label, "5C01-AB01",
                2048);
        CardView card = new CardView(name, "image file", 1 << 28, partition,
                Optional.of(new ConfigView("config.txt", new byte[565])), Optional.empty(), List.of(),
                List.of());
        return CheckedCard.of(new CheckView(card, Purpose.SHIP, List.of("pi3", "pi4", "cm4"), false, List.of(findings),
                Instant.parse("2026-03-02T07:45:10Z")), name);
    }

    private static CheckedCard failed() {
        return CheckedCard.failed("bad.img", CardException.unreadable("it is <empty>", "Look again."));
    }
}
