package bootmend.cli.report;

import bootmend.cli.outcome.BatchTotals;
import java.io.IOException;

/** What is told of many cards, card by card, so that its length costs no memory. */
public interface Report<T> {

    void add(T card) throws IOException;

    /** Writes what comes after the last card, and flushes. */
    void end(BatchTotals totals) throws IOException;
}
