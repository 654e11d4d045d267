package bootmend.change;

import bootmend.CardException;
import java.io.IOException;
import java.time.Clock;

/**
 * Carries a plan out: undo record first, then step by step with a force after each, then the read-back; only then is
 * the change done.
 */
public final class Committer {

    private static final String OWN_FAULT = "Nothing was written. This is a fault in bootmend; please report it.";

    private final UndoStore store;
    private final Clock clock;

    public Committer(UndoStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    /**
     * Makes the change that {@code plan} names and nothing else.
     *
     * @throws CardException of kind REFUSED when nothing was written, of kind INTERRUPTED when something may have been
     */
    public Committed.Recorded commit(Target target, Plan plan) throws CardException {
        return commit(target, plan, "", OWN_FAULT);
    }

    /** Makes the change that {@link UndoPlanner} worked out, and marks {@code done} as undone. */
    public Committed.Recorded undo(Target target, Plan back, UndoRecord done) throws CardException {
        Committed.Recorded committed = commit(
                target,
                back,
                done.id(),
                "Nothing was written. The undo record " + done.file() + " is not one that bootmend wrote.");
        try {
            store.markTakenBack(done);
        } catch (IOException | RuntimeException e) {
            throw CardException.interrupted(
                    "the change was undone, but its undo record could not be marked (" + e + ")",
                    "Make room in bootmend's data folder; the card itself is done.",
                    e);
        }
        return committed;
    }

    private Committed.Recorded commit(Target target, Plan plan, String undoes, String remedy) throws CardException {
        target.gate(plan, !undoes.isEmpty(), remedy);
        if (plan.isEmpty()) {
            throw new IllegalArgumentException("an empty plan has nothing to commit");
        }
        target.refuseUnlessAsPlanned(plan);
        UndoRecord record = store.open(plan, target.medium(), undoes, clock.instant());
        try {
            return new Attempt(target, record, "the change")
                    .run(() -> target.all(plan, record), () -> target.readBack(plan), () -> store.finish(record));
        } catch (CardException e) {
            if (e.kind() == CardException.Kind.REFUSED) {
                discard(record, e);
            }
            throw e;
        }
    }

    /** Nothing was written, so nothing is to be recovered; a record that stays all the same does no harm. */
    private void discard(UndoRecord record, CardException refused) {
        try {
            store.discard(record);
        } catch (IOException | RuntimeException e) {
            refused.addSuppressed(e);
        }
    }
}
