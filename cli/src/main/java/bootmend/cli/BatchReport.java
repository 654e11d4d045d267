package bootmend.cli;

import java.io.Closeable;
import java.io.IOException;

/** A report that is written card by card, so that its length costs no memory. */
interface BatchReport extends Closeable {

    void add(CardReport card) throws IOException;

    /** Writes what comes after the last card. */
    void end(BatchTotals totals) throws IOException;
}
