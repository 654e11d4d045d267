package bootmend.cli.report;

import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.outcome.CommandWords;
import bootmend.page.BatchPage;
import bootmend.page.CardOutcome;
import java.io.IOException;
import java.io.Writer;

/** A batch's report as one page. */
final class ReportHtml implements BatchReport {

    private final Writer out;
    private final BatchPage page;

    ReportHtml(Writer out, String command) throws IOException {
        this.out = out;
        this.page = BatchPage.open(out, command, CommandWords.withoutCard());
    }

    @Override
    public void add(CardOutcome card) throws IOException {
        page.add(card);
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        page.close();
    }

    /** A page that was not ended stays without its counts. */
    @Override
    public void close() throws IOException {
        out.close();
    }
}
