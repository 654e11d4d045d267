package bootmend.cli.report;

import bootmend.cli.json.CardsJson;
import bootmend.cli.outcome.BatchTotals;
import bootmend.page.CardOutcome;
import java.io.IOException;
import java.io.Writer;
import java.util.LinkedHashMap;
import java.util.Map;

/** A batch's report as one JSON document: {@code command}, {@code cards}, {@code totals}, {@code exitCode}. */
final class ReportJson implements BatchReport {

    private final Writer out;
    private final CardsJson json;

    ReportJson(Writer out, String command) throws IOException {
        this.out = out;
        Map<String, String> head = new LinkedHashMap<>();
        head.put("command", command);
        this.json = new CardsJson(out, head);
    }

    @Override
    public void add(CardOutcome card) throws IOException {
        json.add(CardReport.of(card));
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        json.end(totals);
    }

    @Override
    public void close() throws IOException {
        json.close();
        out.close();
    }
}
