package bootmend.cli.report;

import bootmend.batch.CardResult;
import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.outcome.CommandWords;
import bootmend.finding.Purpose;
import bootmend.page.BatchPage;
import bootmend.page.CardOutcome;
import bootmend.page.PackingSlip;
import bootmend.view.CheckView;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.time.ZoneId;

/** A page to print or keep; one that is not ended stays without its end. */
public final class PageReport<T> implements Report<T> {

    private interface Adding<T> {
        void add(T card) throws IOException;
    }

    private final Adding<T> adding;
    private final Closeable page;

    private PageReport(Adding<T> adding, Closeable page) {
        this.adding = adding;
        this.page = page;
    }

    /** A row a card. */
    static Report<CardOutcome> batch(Writer out, String command) throws IOException {
        BatchPage page = BatchPage.open(out, command, CommandWords.withoutCard());
        return new PageReport<>(page::add, page);
    }

    /** A slip a card, to pack with it. */
    public static Report<CardResult<CheckView>> slips(Writer out, Purpose purpose) throws IOException {
        PackingSlip slip = PackingSlip.open(out, purpose, ZoneId.systemDefault(), CommandWords.withoutCard());
        return new PageReport<>(
                card -> {
                    if (card.view().isPresent()) {
                        slip.add(card.card().toString(), card.view().get());
                    } else {
                        slip.add(card.card().toString(), card.error().orElseThrow());
                    }
                },
                slip);
    }

    @Override
    public void add(T card) throws IOException {
        adding.add(card);
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        page.close();
    }
}
