package bootmend.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.StepNames;
import bootmend.card.PartitionView;
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
import java.io.StringWriter;
import java.io.Writer;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** The packing slip, read back by another reader (jsoup), with text of the worst kind in every field that a card decides. */
class PackingSlipTest {

    private static final String HOSTILE = "</dd><script>alert(1)</script>\"'&amp;<!--\u001b[2J\u202e";

    @Test
    void hostileTextStaysTextOnThePage() throws IOException {
        Document page = page(slip -> {
            slip.add(HOSTILE, view(HOSTILE, finding(HOSTILE, HOSTILE)));
            slip.add("bad.img", CardException.unreadable("it is <empty>", "Look again."));
        });
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
        Document page = page(
                slip -> slip.add("lab-07.img", view("LABBOOT", finding("config.txt", "arm_freq=2000 is active."))));
        assertThat(field(page, "Label")).isEqualTo("LABBOOT");
        assertThat(field(page, "Serial")).isEqualTo("5C01-AB01");
        assertThat(field(page, "Config file"))
                .contains("config.txt, 565 bytes")
                .contains("sha256 " + "5635520a268aed816a21b0ba7d3292f3098ff32942e88de607a6ffb111fe2385");
        assertThat(field(page, "Checked")).isEqualTo("to ship, 2026-03-02 07:45 UTC+00:00");
        assertThat(field(page, "Boards")).isEqualTo("pi3 pi4 cm4 (every board that it can be meant for)");
        assertThat(page.selectFirst(".verdict").text())
                .startsWith("Ready to ship")
                .contains("1 warning");
        assertThat(page.selectFirst("section.warning").text())
                .contains(
                        "some-rule",
                        "config.txt line 7",
                        "It means this.",
                        "Do that. <REPAIR_CARD>.",
                        "Source: somewhere");
        assertThat(page.select(".sign div")).extracting(Element::text).contains("Checked by", "Date");
    }

    @Test
    void thePageLoadsNothingFromAnywhere() throws IOException {
        Document page = page(slip -> slip.add("lab-07.img", view("")));
        assertThat(page.select("[src], [href]")).isEmpty();
        assertThat(page.selectFirst("style").data()).doesNotContain("url(", "@import");
        assertThat(field(page, "Label")).isEqualTo("none");
    }

    @Test
    void aFileThatCannotBeWrittenIsAnErrorOfWriting() throws IOException {
        Writer full = new Writer() {
            private int room = 4000;

            @Override
            public void write(char[] text, int start, int length) throws IOException {
                room -= length;
                if (room < 0) {
                    throw new IOException("no space left");
                }
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        PackingSlip slip = PackingSlip.open(full, Purpose.SHIP, ZoneOffset.UTC, new StepNames());
        assertThatThrownBy(() -> {
                    for (int i = 0; i < 10; i++) {
                        slip.add("lab-07.img", view("LABBOOT"));
                    }
                })
                .isInstanceOf(IOException.class)
                .hasMessage("no space left");
    }

    private interface Cards {
        void addTo(PackingSlip slip) throws IOException;
    }

    private static Document page(Cards cards) throws IOException {
        StringWriter text = new StringWriter();
        try (PackingSlip slip = PackingSlip.open(text, Purpose.SHIP, ZoneOffset.UTC, new StepNames())) {
            cards.addTo(slip);
        }
        return Jsoup.parse(text.toString());
    }

    private static String field(Document page, String name) {
        return page.select("dt").stream()
                .filter(term -> term.text().equals(name))
                .findFirst()
                .orElseThrow()
                .nextElementSibling()
                .text();
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

    private static CheckView view(String label, Finding... findings) {
        PartitionView partition =
                new PartitionView("MBR", 1, 8192, 524288, 512, "first", "FAT32", label, "5C01-AB01", 2048);
        CardView card = new CardView(
                "lab-07.img",
                "image file",
                1 << 28,
                partition,
                Optional.of(new ConfigView("config.txt", new byte[565])),
                Optional.empty(),
                List.of(),
                List.of());
        return new CheckView(
                card,
                Purpose.SHIP,
                List.of("pi3", "pi4", "cm4"),
                false,
                List.of(findings),
                List.of(),
                Instant.parse("2026-03-02T07:45:10Z"));
    }
}
