package bootmend.cli.report;

import bootmend.batch.CardResult;
import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.outcome.CheckedCard;
import bootmend.view.CheckView;
import java.io.Closeable;
import java.io.IOException;

/** Hands a check's results to one form of them. */
public final class CheckSink implements CardSink<CheckView> {

    private final CheckFile form;
    private final Closeable below;

    /** @param below what is closed after the form */
    public CheckSink(CheckFile form, Closeable below) {
        this.form = form;
        this.below = below;
    }

    /** A form on what stays open. */
    public CheckSink(CheckFile form) {
        this(form, () -> {});
    }

    @Override
    public void add(CardResult<CheckView> result) throws IOException {
        form.add(CheckedCard.of(result));
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        try (below) {
            form.close();
        }
    }
}
