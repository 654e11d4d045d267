package bootmend.cli.report;

import bootmend.CardException;
import bootmend.cli.outcome.CheckedCard;
import bootmend.cli.outcome.CommandWords;
import bootmend.config.VisibleText;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.view.CheckView;
import bootmend.view.ConfigView;
import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * A check as a table (RFC 4180): one row a finding; a card without one has a row of severity {@code none}, a card that
 * could not be checked one of severity {@code error}.
 */
public final class CheckCsv implements CheckFile {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader(
                    "card",
                    "label",
                    "serial",
                    "config_sha256",
                    "purpose",
                    "checked_at",
                    "severity",
                    "rule",
                    "path",
                    "line",
                    "boards",
                    "what",
                    "meaning",
                    "remedy",
                    "source")
            .get();

    /** What a cell may not begin with; source: common practice, OWASP community pages, "CSV Injection". */
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private final CSVPrinter printer;
    private final Purpose purpose;

    public CheckCsv(Appendable out, Purpose purpose) throws IOException {
        this.printer = new CSVPrinter(out, FORMAT);
        this.purpose = purpose;
    }

    @Override
    public void add(CheckedCard card) throws IOException {
        if (card.error().isPresent()) {
            CardException error = card.error().get();
            row(Stream.of(
                    card.name(),
                    "",
                    "",
                    "",
                    purpose.word(),
                    "",
                    "error",
                    "",
                    "",
                    "",
                    "",
                    error.getMessage(),
                    "",
                    CommandWords.about(card.name()).remedy(error),
                    ""));
        } else {
            rows(card.view().orElseThrow());
        }
    }

    @Override
    public void close() throws IOException {
        printer.flush();
    }

    private void rows(CheckView view) throws IOException {
        List<String> card = List.of(
                view.card().card(),
                view.card().partition().label(),
                view.card().partition().serial(),
                view.card().config().map(ConfigView::sha256).orElse(""),
                view.purpose().word(),
                view.when().toString());
        if (view.findings().isEmpty()) {
            row(Stream.concat(card.stream(), Stream.of("none", "", "", "", "", "", "", "", "")));
        }
        for (Finding finding : view.findings()) {
            row(Stream.concat(
                    card.stream(),
                    Stream.of(
                            finding.severity().word(),
                            finding.id(),
                            finding.where().path(),
                            finding.where().line().isPresent()
                                    ? Integer.toString(finding.where().line().getAsInt())
                                    : "",
                            String.join(" ", finding.boards()),
                            finding.what(),
                            finding.rule().meaning(),
                            CommandWords.about(view.card().card()).remedy(finding.rule().remedy(), finding.rule().steps()),
                            finding.rule().source())));
        }
    }

    private void row(Stream<String> cells) throws IOException {
        printer.printRecord(cells.map(CheckCsv::safe).toList());
    }

    /** The text as a table program shows it without taking it for a formula. */
    static String safe(String text) {
        boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
        return (formula ? "'" : "") + VisibleText.of(text);
    }
}
