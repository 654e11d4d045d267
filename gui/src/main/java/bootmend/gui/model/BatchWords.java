package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.page.CardOutcome;
import bootmend.page.CardState;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How a batch and its cards are said; texts from cards are still to be made visible. */
public final class BatchWords {

    private final Words words;

    public BatchWords(Words words) {
        this.words = words;
    }

    /** Label and serial; empty where the card was not read. */
    public String identity(BatchRow row) {
        return row.now()
                .map(was -> words.of(
                        "batch.identity", was.label().isEmpty() ? words.of("fact.nolabel") : was.label(), was.serial()))
                .orElse("");
    }

    /** At stock, or how many lines tune it; empty where the card was not read. */
    public String tuning(BatchRow row) {
        return row.now()
                .map(was -> was.config().isEmpty()
                        ? words.of("batch.noconfig")
                        : was.stock() ? words.of("mark.stock") : words.of("batch.lines", was.activeLines()))
                .orElse("");
    }

    /** What became of the card. */
    public String state(BatchRow row) {
        if (row.waiting() || row.outcome().isEmpty()) {
            return words.of("batch.state.waiting");
        }
        return words.of("batch.state." + key(row.outcome().get().state()));
    }

    /** What changes, what was found, or why it failed, on one line. */
    public String detail(BatchRow row) {
        if (row.waiting() || row.outcome().isEmpty()) {
            return "";
        }
        CardOutcome came = row.outcome().get();
        List<String> parts = new ArrayList<>();
        if (came.state() == CardState.PLANNED || came.state() == CardState.CHANGED) {
            parts.add(change(came, row.sectors()));
        }
        if (came.state() == CardState.NOT_STARTED) {
            return words.of("batch.detail.notstarted");
        }
        Optional.of(came.findingCounts()).filter(counts -> !counts.isEmpty()).ifPresent(parts::add);
        came.error().ifPresent(error -> parts.add(error.getMessage()));
        return String.join("; ", parts);
    }

    private String change(CardOutcome came, int sectors) {
        String key = came.state() == CardState.CHANGED ? "batch.detail.changed" : "batch.detail.planned";
        return words.of(key, came.changed().size(), sectors);
    }

    /** What is done, in a few words, as a report is headed. */
    public String task(BatchTask task) {
        if (task instanceof BatchTask.Check check) {
            return words.of(
                    "batch.task.check", words.of("batch.for." + check.purpose().word()));
        }
        if (task instanceof BatchTask.WorkOut workOut) {
            return words.of("batch.task.workout", order(workOut.order()));
        }
        return task instanceof BatchTask.Make make ? order(make.order()) : words.of("batch.task.look");
    }

    private String order(ChangeOrder order) {
        return order.request() instanceof ChangeRequest.ToProfile profile
                ? words.of("batch.task.profile", profile.name())
                : words.of("batch.task." + RequestKey.of(order.request()));
    }

    private static String key(CardState state) {
        return state.name().toLowerCase(Locale.ROOT).replace("_", "");
    }
}
