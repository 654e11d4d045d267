package bootmend.cli;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A batch's report as a table (RFC 4180), one row a card; what a card has several of stands in one cell. */
final class ReportCsv implements BatchReport {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder()
            .setHeader("card", "state", "label", "serial", "fat", "config", "config_sha256", "stock_before", "changed",
                    "verified", "findings", "undo_record", "seconds", "error", "remedy", "exit_code").get();

    private final CSVPrinter printer;

    ReportCsv(Writer out) throws IOException {
        this.printer = new CSVPrinter(out, FORMAT);
    }

    @Override
    public void add(CardReport card) throws IOException {
        printer.printRecord(Stream.of(card.card(), card.state().words(),
                was(card, CardReport.Was::label), was(card, CardReport.Was::serial), was(card, CardReport.Was::fatType),
                was(card, CardReport.Was::config), was(card, CardReport.Was::configSha256),
                was(card, was -> Boolean.toString(was.stock())),
                join(card.changed(), ReportCsv::line), Boolean.toString(card.verified()),
                join(card.findings(), ReportCsv::finding), card.undoRecord() == null ? "" : card.undoRecord(),
                String.format(Locale.ROOT, "%.3f", card.seconds()), card.error() == null ? "" : card.error().what(),
                card.error() == null ? "" : card.error().remedy(), Integer.toString(card.exitCode()))
                .map(CheckCsv::safe).toList());
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        printer.flush();
    }

    @Override
    public void close() throws IOException {
        printer.close();
    }

    private static String was(CardReport card, Function<CardReport.Was, String> field) {
        String value = card.was() == null ? null : field.apply(card.was());
        return value == null ? "" : value;
    }

    private static <T> String join(List<T> items, Function<T, String> words) {
        return items.stream().map(words).collect(Collectors.joining("; "));
    }

    static String line(ChangeJson.LineJson line) {
        return line.file() + " line " + line.line() + ": " + (line.before() == null ? "(new)" : line.before()) + " -> "
                + (line.after() == null ? "(taken out)" : line.after());
    }

    static String finding(CardReport.FindingLine finding) {
        return (finding.severity() == null ? finding.mended() ? "mended" : "not mended" : finding.severity()) + " "
                + finding.id() + ": " + finding.where() + ": " + finding.what();
    }
}
