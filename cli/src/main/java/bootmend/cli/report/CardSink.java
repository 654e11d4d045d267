package bootmend.cli.report;

import bootmend.batch.CardResult;
import bootmend.cli.outcome.BatchTotals;
import java.io.IOException;

/** Where each card's result goes besides the summary. */
public interface CardSink<T> {
    void add(CardResult<T> result) throws IOException;

    /** After the last card. */
    void end(BatchTotals totals) throws IOException;
}
