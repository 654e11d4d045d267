package bootmend.cli.report;

import bootmend.cli.outcome.BatchTotals;
import bootmend.page.CardOutcome;
import java.io.Closeable;
import java.io.IOException;

/** A report that is written card by card, so that its length costs no memory. */
interface BatchReport extends Closeable {

    void add(CardOutcome card) throws IOException;

    /** Writes what comes after the last card. */
    void end(BatchTotals totals) throws IOException;
}
