package bootmend.cli.text;

import bootmend.CardException;
import bootmend.cli.outcome.BatchTotals;
import bootmend.page.Amount;
import bootmend.page.CardOutcome;
import bootmend.page.CardState;
import java.util.ArrayList;
import java.util.List;

/**
 * The summary of a batch: every card of a small one, of a larger one those that want attention, and the counts.
 *
 * <p>What is kept for it is bounded, so that a batch of any length takes the same memory.
 */
public final class BatchTable {

    private static final int SMALL = 50;
    private static final int MOST_ROWS = 500;
    private static final List<String> HEADER =
            List.of("card", "state", "what it was", "changed", "verified", "findings, errors");

    private final boolean small;
    private final List<CardOutcome> rows = new ArrayList<>();
    private int leftOut;

    /** @param cards how many there are in all */
    public BatchTable(int cards) {
        this.small = cards <= SMALL;
    }

    public void add(CardOutcome card) {
        if (!small && (!card.wantsAttention() || card.state() == CardState.NOT_STARTED)) {
            return;
        }
        if (rows.size() >= MOST_ROWS) {
            leftOut++;
            return;
        }
        rows.add(card);
    }

    public void print(Screen screen, BatchTotals totals, boolean reported) {
        if (!rows.isEmpty()) {
            screen.table(
                    HEADER,
                    rows.stream().map(BatchTable::cells).toList(),
                    rows.stream().map(BatchTable::style).toList());
            screen.blank();
        }
        if (leftOut > 0) {
            screen.line("and " + Amount.count(leftOut, "card") + " more that want attention");
        }
        screen.line(
                "bold",
                Amount.count(totals.counts().cards(), "card") + ": "
                        + totals.counts().words() + ".");
        if (!small && !reported) {
            screen.line("A file that lists every card comes with --report FILE.csv, FILE.json or FILE.html.");
        }
    }

    private static List<String> cells(CardOutcome card) {
        String last = card.error().map(CardException::getMessage).orElseGet(card::findingCounts);
        return List.of(
                card.card(),
                card.state().words(),
                card.was().map(CardOutcome.Was::words).orElse(""),
                card.changed().isEmpty() ? "" : Amount.count(card.changed().size(), "line"),
                card.verified() ? "verified" : "",
                last);
    }

    private static String style(CardOutcome card) {
        return card.wantsAttention() ? "bold" : "";
    }
}
