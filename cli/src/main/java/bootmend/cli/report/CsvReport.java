package bootmend.cli.report;

import bootmend.cli.outcome.BatchTotals;
import bootmend.config.VisibleText;
import java.io.IOException;
import java.util.List;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A table (RFC 4180) with any number of rows a card. */
public final class CsvReport<T> implements Report<T> {

    /** What a cell may not begin with; source: common practice, OWASP community pages, "CSV Injection". */
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private final CSVPrinter printer;
    private final Function<T, List<List<String>>> rows;

    public CsvReport(Appendable out, List<String> header, Function<T, List<List<String>>> rows) throws IOException {
        this.printer = new CSVPrinter(out, CSVFormat.RFC4180);
        this.rows = rows;
        printer.printRecord(header);
    }

    @Override
    public void add(T card) throws IOException {
        for (List<String> row : rows.apply(card)) {
            printer.printRecord(row.stream().map(CsvReport::safe).toList());
        }
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        printer.flush();
    }

    /** The text as a table program shows it without taking it for a formula. */
    private static String safe(String text) {
        boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
        return (formula ? "'" : "") + VisibleText.of(text);
    }
}
