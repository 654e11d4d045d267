package bootmend.cli.outcome;

import bootmend.page.BatchCounts;
import bootmend.page.CardOutcome;

/** How many cards of a batch came to what, and the worst exit code among them. */
public final class BatchTotals {

    private final BatchCounts counts = new BatchCounts();
    private int exitCode = ExitCode.DONE;

    public void add(CardOutcome card) {
        counts.add(card.state());
        worsen(ExitCode.of(card));
    }

    public void worsen(int code) {
        exitCode = Math.max(exitCode, code);
    }

    public BatchCounts counts() {
        return counts;
    }

    public int exitCode() {
        return exitCode;
    }
}
