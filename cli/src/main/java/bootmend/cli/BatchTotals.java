package bootmend.cli;

import bootmend.page.BatchCounts;
import bootmend.page.CardOutcome;

/** How many cards of a batch came to what, and the worst exit code among them. */
final class BatchTotals {

    private final BatchCounts counts = new BatchCounts();
    private int exitCode = ExitCode.DONE;

    void add(CardOutcome card) {
        counts.add(card.state());
        worsen(ExitCode.of(card));
    }

    void worsen(int code) {
        exitCode = Math.max(exitCode, code);
    }

    BatchCounts counts() {
        return counts;
    }

    int exitCode() {
        return exitCode;
    }
}
