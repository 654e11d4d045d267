package bootmend.gui.model;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.batch.CardNames;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.Made;
import bootmend.operation.OpenRecovery;
import bootmend.operation.ProposedChange;
import bootmend.operation.RecoverJob;
import bootmend.request.CardRequest;
import bootmend.view.InterruptedChange;
import bootmend.view.RecordedChange;
import bootmend.view.RecoveryView;
import java.io.IOException;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** The change strip: what a user wants done to a card, what that would do, and whether it was done. */
public final class ChangeModel {

    private final Services services;
    private final CardRequest card;
    private final Runnable changed;
    private final Watched<ChangeState> state = new Watched<>(new ChangeState.Idle());
    private final Watched<Set<String>> agreed = new Watched<>(Set.of());
    private WorkQueue.Ticket waiting = () -> {};

    /** @param changed is run after the card was changed, or may have been */
    ChangeModel(Services services, CardRequest card, Runnable changed) {
        this.services = services;
        this.card = card;
        this.changed = changed;
    }

    public Watched<ChangeState> state() {
        return state;
    }

    /** The questions that were agreed to. */
    public Watched<Set<String>> agreed() {
        return agreed;
    }

    /** Works out what a request would do; nothing is written. */
    public void choose(ChangeOrder order) {
        if (isTaken()) {
            return;
        }
        waiting.drop();
        agreed.set(Set.of());
        state.set(new ChangeState.WorkingOut(order));
        waiting = services.queue()
                .submitFirst(
                        services.words().of("busy.plan"),
                        () -> changeable(order),
                        change -> state.set(
                                change.isNothing()
                                        ? new ChangeState.Nothing(change)
                                        : new ChangeState.Proposed(change)),
                        error -> state.set(failed(order, error)));
    }

    /** Nothing is wanted any more. */
    public void forget() {
        if (!isTaken()) {
            waiting.drop();
            state.set(new ChangeState.Idle());
        }
    }

    /** A change to the card that was interrupted is known of. */
    void interrupted(RecoveryView recovery) {
        if (!(state.get() instanceof ChangeState.Making)) {
            waiting.drop();
            state.set(new ChangeState.Interrupted(recovery, Optional.empty()));
        }
    }

    /** Changes that were interrupted are known of, and not which is this card's. */
    void unclear(InterruptedChange.Unclear found) {
        if (!(state.get() instanceof ChangeState.Making)) {
            waiting.drop();
            state.set(new ChangeState.Unclear(found, Optional.empty()));
        }
    }

    /** The user says which change that was interrupted is this card's; it is shown then, and nothing is written yet. */
    public void nameInterrupted(RecordedChange mine) {
        if (!(state.get() instanceof ChangeState.Unclear unclear)) {
            return;
        }
        Optional<String> id = Optional.of(mine.id());
        waiting = services.queue()
                .submitFirst(
                        services.words().of("busy.plan"),
                        () -> recover(id, recovery -> recovery.view().orElseThrow()),
                        view -> state.set(new ChangeState.Interrupted(view, id)),
                        error -> state.set(new ChangeState.Unclear(unclear.waiting(), Optional.of(error))));
    }

    /** Whether a change is being made, or one that was interrupted comes first. */
    private boolean isTaken() {
        return state.get() instanceof ChangeState.Making || state.get().isWaiting();
    }

    /** Agrees to one of the questions, or takes that back. */
    public void agree(String question, boolean yes) {
        Set<String> next = new HashSet<>(agreed.get());
        if (yes) {
            next.add(question);
        } else {
            next.remove(question);
        }
        agreed.set(Set.copyOf(next));
    }

    /** Whether the change that is shown can be made. */
    public boolean canMake() {
        return state.get() instanceof ChangeState.Proposed proposed
                && agreed.get().containsAll(proposed.change().questions());
    }

    /** Makes the change that is shown: undo record, writes, forces, read-back. */
    public void make() {
        if (!canMake() || !(state.get() instanceof ChangeState.Proposed proposed)) {
            return;
        }
        ProposedChange shown = proposed.change();
        String key = RequestKey.of(shown.order().request());
        state.set(new ChangeState.Making(key));
        services.queue()
                .submitChange(
                        services.words().of("busy.write"),
                        () -> operation().make(shown).orThrow(),
                        outcome -> after(outcome.ifMade()
                                .<ChangeState>map(made -> new ChangeState.Done(key, made, shown.leavesDamage()))
                                .orElseGet(() -> new ChangeState.Nothing(shown))),
                        error -> after(failed(shown.order(), error)));
    }

    /** Writes what is left of a change that was interrupted. */
    public void finishInterrupted() {
        recover("finish", OpenRecovery::finish);
    }

    /** Writes the old content back where a change was interrupted. */
    public void takeInterruptedBack() {
        recover("reverse", OpenRecovery::undo);
    }

    private static ChangeState failed(ChangeOrder order, CardException error) {
        return new ChangeState.Failed(
                RequestKey.of(order.request()),
                error,
                error.isRefusedFor(NextStep.Allow.IN_PLACE)
                        ? Optional.of(order.accepting(NextStep.Allow.IN_PLACE))
                        : Optional.empty());
    }

    private void after(ChangeState next) {
        state.set(next);
        changed.run();
    }

    private ProposedChange changeable(ChangeOrder order) throws CardException {
        CardNames.refuseToChange(card.card());
        return operation().workOut(card, order);
    }

    /** Works out what a request would do, on the thread that calls; nothing is written. */
    ProposedChange preview(ChangeRequest request) throws CardException {
        return operation().workOut(card, ChangeOrder.of(request));
    }

    private ChangeOperation operation() {
        return new ChangeOperation(services.workplace());
    }

    /** What is done with a change that was interrupted. */
    @FunctionalInterface
    private interface Way<T> {
        T go(OpenRecovery recovery) throws CardException;
    }

    private void recover(String key, Way<Made> way) {
        if (!(state.get() instanceof ChangeState.Interrupted cut)) {
            return;
        }
        state.set(new ChangeState.Making(key));
        services.queue()
                .submitChange(
                        services.words().of("busy.write"),
                        () -> recover(cut.named(), way),
                        made -> after(new ChangeState.Done(key, made, false)),
                        error -> after(new ChangeState.Failed(key, error, Optional.empty())));
    }

    private <T> T recover(Optional<String> named, Way<T> way) throws CardException {
        try (OpenRecovery recovery = new RecoverJob(services.workplace()).begin(card, named)) {
            if (recovery.view().isEmpty()) {
                throw CardException.refused("no change waits on this card any more", "Look at the card again.");
            }
            return way.go(recovery);
        } catch (IOException e) {
            throw told(e);
        }
    }

    private static CardException told(IOException e) {
        return CardException.unreadable(
                "the card could not be closed (" + e.getMessage() + ")",
                "Take it out, put it back in and look at it again.",
                e);
    }
}
