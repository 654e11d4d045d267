package bootmend.page;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.batch.CardResult;
import bootmend.card.PartitionView;
import bootmend.finding.Finding;
import bootmend.finding.Fix;
import bootmend.finding.Place;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.operation.ChangeOutcome;
import bootmend.operation.Made;
import bootmend.operation.SampleChange;
import bootmend.view.CardView;
import bootmend.view.CheckView;
import bootmend.view.ConfigView;
import bootmend.view.ShowView;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;

/** What a batch's cards came to, and the page of it, read back by another reader (jsoup). */
class BatchPageTest {

    private static final String HOSTILE = "</td><script>alert(1)</script>\"'&amp;<!--\u001b[2J\u202e";
    private static final String SHOWN = "</td><script>alert(1)</script>\"'&amp;<!--\\x1B[2J\\u{202E}";
    private static final Duration TOOK = Duration.ofNanos(1_234_567_890);

    @Test
    void aChangedCardHasItsLinesItsUndoRecordAndItsTime() throws IOException {
        Element row = page(CardOutcome.ofChange(done("lab-07.img", change(List.of(), true))))
                .selectFirst("tbody tr");

        assertThat(row.children())
                .extracting(Element::text)
                .containsExactly(
                        "lab-07.img",
                        "changed",
                        "LAB, 5C01-AB01, stock sha256 "
                                + "5635520a268aed816a21b0ba7d3292f3098ff32942e88de607a6ffb111fe2385",
                        "config.txt line 2: arm_freq=2000 -> (taken out)",
                        "verified /home/lab/undo/1",
                        "",
                        "1.235");
        assertThat(row.hasClass("bad")).isFalse();
    }

    @Test
    void whatOnlyWouldChangeIsNotCalledVerified() throws IOException {
        CardOutcome planned = CardOutcome.ofChange(done("lab-07.img", change(List.of(), false)));

        assertThat(planned.state()).isEqualTo(CardState.PLANNED);
        assertThat(page(planned).selectFirst("tbody tr").text())
                .contains("to change")
                .doesNotContain("verified");
    }

    @Test
    void damageThatARepairLeavesWantsAttention() throws IOException {
        List<Finding> findings = List.of(
                finding("fat-copies", "The copies differ.", Fix.REPAIR),
                finding("lost-clusters", "2 are lost.", Fix.DECISION));
        CardOutcome repaired = CardOutcome.ofChange(done("lab-07.img", change(findings, true)));

        assertThat(repaired.findingCounts()).isEqualTo("2 found, 1 repaired");
        assertThat(page(repaired).selectFirst("tr.bad").text())
                .contains(
                        "repaired fat-copies: FAT: The copies differ. It matters.",
                        "not repaired lost-clusters: FAT: 2 are lost. It matters.");
    }

    @Test
    void aCheckedCardIsReadyUnlessItHasABlocker() {
        CardOutcome ready =
                CardOutcome.ofCheck(done("a.img", check(Severity.WARNING, Severity.WARNING, Severity.NOTE)));
        CardOutcome stopped = CardOutcome.ofCheck(done("b.img", check(Severity.BLOCKER)));

        assertThat(ready.state()).isEqualTo(CardState.READY);
        assertThat(ready.wantsAttention()).isFalse();
        assertThat(ready.findingCounts()).isEqualTo("2 warnings, 1 note");
        assertThat(ready.words(ready.findings().get(0))).isEqualTo("warning some-rule: config.txt line 7: It is so.");
        assertThat(stopped.state()).isEqualTo(CardState.NOT_READY);
        assertThat(stopped.wantsAttention()).isTrue();
    }

    @Test
    void aConfigFileThatCannotBeReadWantsAttention() {
        CardException problem = CardException.unreadable("config.txt is not there", "Look at the card.");
        CardView card = card("LAB", Optional.empty(), Optional.of(problem));
        CardOutcome seen = CardOutcome.ofShow(done(
                "a.img",
                new ShowView(
                        card, Optional.empty(), List.of(), true, List.of(), List.of(), Optional.empty(), List.of())));

        assertThat(seen.state()).isEqualTo(CardState.SEEN);
        assertThat(seen.wantsAttention()).isTrue();
        assertThat(seen.error()).contains(problem);
        assertThat(seen.was().orElseThrow().words()).isEqualTo("LAB, 5C01-AB01, no config file");
        assertThat(CardOutcome.ofCard(done("a.img", card))).isEqualTo(seen);
    }

    @Test
    void theEndCountsTheCardsByWhatTheyCameTo() throws IOException {
        CardResult<CheckView> late = new CardResult<>(
                Path.of("c.img"),
                false,
                Optional.empty(),
                Optional.of(CardException.refused("it was not started", "Give the command again.")),
                Duration.ZERO);
        Document page = page(
                CardOutcome.ofCheck(done("a.img", check())),
                CardOutcome.ofCheck(done("b.img", check())),
                CardOutcome.ofCheck(failed("bad.img", "it is empty")),
                CardOutcome.ofCheck(late));

        assertThat(page.select("p").get(0).text()).isEqualTo("4 cards: 2 ready, 1 failed, 1 not started.");
        assertThat(page.select("tr.bad td:first-child"))
                .extracting(Element::text)
                .containsExactly("bad.img", "c.img");
    }

    @Test
    void hostileTextStaysTextAndNothingIsLoaded() throws IOException {
        ChangeOutcome change = SampleChange.of(
                card(HOSTILE, Optional.empty(), Optional.empty()),
                List.of(SampleChange.line(HOSTILE, 1, HOSTILE, HOSTILE)),
                List.of(Finding.of(rule("some-id", Severity.WARNING, Fix.REPAIR), Place.file(HOSTILE), HOSTILE)),
                Optional.of(new Made.OnCard(HOSTILE, true)));
        Document page =
                page(CardOutcome.ofChange(done("lab.img", change)), CardOutcome.ofCheck(failed("bad.img", HOSTILE)));

        assertThat(page.select("script, iframe, img, link, a, [src], [href]")).isEmpty();
        assertThat(page.select("tbody tr")).hasSize(2);
        assertThat(page.select("tbody td")).hasSize(14);
        assertThat(page.select("tbody tr").get(0).text())
                .contains(
                        SHOWN + ", 5C01-AB01",
                        SHOWN + " line 1: " + SHOWN + " -> " + SHOWN,
                        "verified " + SHOWN,
                        "repaired some-id: " + SHOWN + ": " + SHOWN);
        assertThat(page.select("tbody tr").get(1).text()).contains(SHOWN + ". Look again.");
    }

    private static Document page(CardOutcome... cards) throws IOException {
        StringWriter text = new StringWriter();
        try (BatchPage page = BatchPage.open(text, "reset", new StepNames())) {
            for (CardOutcome card : cards) {
                page.add(card);
            }
        }
        return Jsoup.parse(text.toString());
    }

    private static <T> CardResult<T> done(String name, T view) {
        return new CardResult<>(Path.of(name), true, Optional.of(view), Optional.empty(), TOOK);
    }

    private static CardResult<CheckView> failed(String name, String what) {
        return new CardResult<>(
                Path.of(name),
                true,
                Optional.empty(),
                Optional.of(CardException.unreadable(what, "Look again.")),
                TOOK);
    }

    private static ChangeOutcome change(List<Finding> findings, boolean made) {
        return SampleChange.of(
                healthy(),
                List.of(SampleChange.line("config.txt", 2, "arm_freq=2000", null)),
                findings,
                made ? Optional.of(new Made.OnCard("/home/lab/undo/1", true)) : Optional.empty());
    }

    private static Finding finding(String id, String what, Fix fix) {
        return Finding.of(rule(id, Severity.WARNING, fix), Place.Region.FAT, what);
    }

    private static Rule rule(String id, Severity severity, Fix fix) {
        return Rule.of(id, Rule.always(severity), fix, "It matters.");
    }

    private static CheckView check(Severity... severities) {
        List<Finding> findings = List.of(severities).stream()
                .map(severity -> new Finding(
                        rule("some-rule", severity, Fix.RESET),
                        Place.line("config.txt", 7),
                        "It is so.",
                        List.of("pi4"),
                        Fix.RESET))
                .toList();
        return new CheckView(
                healthy(),
                Purpose.SHIP,
                List.of("pi4"),
                true,
                findings,
                List.of(),
                Instant.parse("2026-03-02T07:45:10Z"));
    }

    private static CardView healthy() {
        return card("LAB", Optional.of(new ConfigView("config.txt", new byte[565])), Optional.empty());
    }

    private static CardView card(String label, Optional<ConfigView> config, Optional<CardException> problem) {
        PartitionView partition =
                new PartitionView("MBR", 1, 8192, 524288, 512, "first", "FAT32", label, "5C01-AB01", 2048);
        return new CardView("lab-07.img", "image file", 1 << 28, partition, config, problem, List.of(), List.of());
    }
}
