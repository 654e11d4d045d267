package bootmend.cli.report;

import bootmend.CardException;
import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.outcome.CommandWords;
import bootmend.cli.outcome.ExitCode;
import bootmend.operation.Made;
import bootmend.page.CardOutcome;
import bootmend.view.ConfigView;
import java.io.IOException;
import java.io.Writer;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A batch's report as a table (RFC 4180), one row a card; what a card has several of stands in one cell. */
final class ReportCsv implements BatchReport {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader(
                    "card",
                    "state",
                    "label",
                    "serial",
                    "fat",
                    "config",
                    "config_sha256",
                    "stock_before",
                    "changed",
                    "verified",
                    "findings",
                    "undo_record",
                    "seconds",
                    "error",
                    "remedy",
                    "exit_code")
            .get();

    private final CSVPrinter printer;

    ReportCsv(Writer out) throws IOException {
        this.printer = new CSVPrinter(out, FORMAT);
    }

    @Override
    public void add(CardOutcome card) throws IOException {
        printer.printRecord(Stream.of(
                        card.card(),
                        card.state().words(),
                        was(card, CardOutcome.Was::label),
                        was(card, CardOutcome.Was::serial),
                        was(card, CardOutcome.Was::fatType),
                        config(card, ConfigView::path),
                        config(card, ConfigView::sha256),
                        was(card, was -> Boolean.toString(was.stock())),
                        String.join("; ", card.changedWords()),
                        Boolean.toString(card.verified()),
                        card.findings().stream().map(card::words).collect(Collectors.joining("; ")),
                        card.made().map(Made::record).orElse(""),
                        String.format(Locale.ROOT, "%.3f", card.seconds()),
                        card.error().map(CardException::getMessage).orElse(""),
                        card.error()
                                .map(CommandWords.about(card.card())::remedy)
                                .orElse(""),
                        Integer.toString(ExitCode.of(card)))
                .map(CheckCsv::safe)
                .toList());
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        printer.flush();
    }

    @Override
    public void close() throws IOException {
        printer.close();
    }

    private static String was(CardOutcome card, Function<CardOutcome.Was, String> field) {
        return card.was().map(field).orElse("");
    }

    private static String config(CardOutcome card, Function<ConfigView, String> field) {
        return card.was().flatMap(CardOutcome.Was::config).map(field).orElse("");
    }
}
