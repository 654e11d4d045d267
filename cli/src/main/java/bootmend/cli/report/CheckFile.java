package bootmend.cli.report;

import bootmend.cli.outcome.CheckedCard;
import java.io.Closeable;
import java.io.IOException;

/** A form in which a check's outcome is written, card by card. */
interface CheckFile extends Closeable {

    void add(CheckedCard card) throws IOException;
}
