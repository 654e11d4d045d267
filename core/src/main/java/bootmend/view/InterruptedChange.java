package bootmend.view;

import bootmend.change.Interruption;
import bootmend.change.OpenChange;
import bootmend.change.UndoRecord;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Which change that was interrupted waits on a card, as a user is shown it; a closed set. */
public sealed interface InterruptedChange {

    /** None is known of. */
    record None() implements InterruptedChange {}

    /** This one was made to this very card. */
    record Own(RecoveryView change) implements InterruptedChange {}

    /**
     * It cannot be told which one is this card's.
     *
     * @param candidates those that a user may name as this card's; at least one
     * @param others finished changes, one of which may have left what stands on the card
     */
    record Unclear(List<RecordedChange> candidates, List<RecordedChange> others) implements InterruptedChange {
        public Unclear {
            candidates = List.copyOf(candidates);
            others = List.copyOf(others);
        }
    }

    /**
     * Changes to other cards of this make-up wait; nothing shows that one was made to this card.
     *
     * @param changes oldest first
     */
    record Elsewhere(List<RecordedChange> changes) implements InterruptedChange {
        public Elsewhere {
            changes = List.copyOf(changes);
        }
    }

    static InterruptedChange of(Interruption found) {
        if (found instanceof Interruption.Exact exact) {
            return new Own(RecoveryView.of(exact.change()));
        }
        if (found instanceof Interruption.Ambiguous ambiguous) {
            return new Unclear(
                    of(ambiguous.candidates().stream().map(OpenChange::record).toList()), of(ambiguous.others()));
        }
        return found instanceof Interruption.Elsewhere elsewhere ? new Elsewhere(of(elsewhere.records())) : new None();
    }

    private static List<RecordedChange> of(List<UndoRecord> records) {
        return records.stream().map(RecordedChange::of).toList();
    }

    /** The change that surely is this card's. */
    default Optional<RecoveryView> own() {
        return this instanceof Own mine ? Optional.of(mine.change()) : Optional.empty();
    }

    /** What is known of it, in whole sentences; empty where there is nothing to say. */
    default List<String> words() {
        if (this instanceof Own mine) {
            RecoveryView change = mine.change();
            return List.of("A change (\"" + change.title() + "\", begun " + change.began() + ") was interrupted: "
                    + change.state() + "; it waits to be finished or undone.");
        }
        if (this instanceof Unclear unclear) {
            String finished = unclear.others().isEmpty()
                    ? ""
                    : " Or it holds what a finished change left: " + named(unclear.others()) + ".";
            return List.of(
                    "A change to this card or to another written from the same image was interrupted, and it cannot be "
                            + "told to which: " + named(unclear.candidates()) + "." + finished);
        }
        if (this instanceof Elsewhere other) {
            return other.changes().stream()
                    .map(change -> "Another card's change waits: " + change.words()
                            + ". Nothing shows that it was made to this card.")
                    .toList();
        }
        return List.of();
    }

    private static String named(List<RecordedChange> changes) {
        return changes.stream().map(RecordedChange::words).collect(Collectors.joining(", "));
    }
}
