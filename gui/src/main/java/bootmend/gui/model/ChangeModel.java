package bootmend.gui.model;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.batch.CardNames;
import bootmend.operation.ChangeView;
import bootmend.operation.OpenRecovery;
import bootmend.operation.ProposedChange;
import bootmend.operation.RecoverJob;
import bootmend.request.CardRequest;
import bootmend.view.RecoveryView;
import bootmend.workplace.Workplace;
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
    private Bench.Ticket waiting = () -> {};

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

    /** Works out what a wish would do; nothing is written. */
    public void choose(Wish wish) {
        if (state.get() instanceof ChangeState.Making || state.get() instanceof ChangeState.CutShort) {
            return;
        }
        waiting.drop();
        agreed.set(Set.of());
        state.set(new ChangeState.WorkingOut(wish));
        waiting = services.bench()
                .submitFirst(
                        services.words().of("busy.plan"),
                        () -> changeable(wish),
                        preview -> state.set(
                                preview.nothing()
                                        ? new ChangeState.Nothing(wish, preview)
                                        : new ChangeState.Proposed(wish, preview)),
                        error -> state.set(failed(wish, error)));
    }

    /** Nothing is wanted any more. */
    public void forget() {
        if (!(state.get() instanceof ChangeState.Making || state.get() instanceof ChangeState.CutShort)) {
            waiting.drop();
            state.set(new ChangeState.Idle());
        }
    }

    /** A change to the card that was cut short is known of. */
    void cutShort(RecoveryView recovery) {
        if (!(state.get() instanceof ChangeState.Making)) {
            waiting.drop();
            state.set(new ChangeState.CutShort(recovery));
        }
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
                && agreed.get().containsAll(proposed.preview().questions());
    }

    /** Makes the change that is shown: undo record, writes, forces, read-back. */
    public void make() {
        if (!canMake() || !(state.get() instanceof ChangeState.Proposed proposed)) {
            return;
        }
        state.set(new ChangeState.Making(proposed.wish().key()));
        services.bench()
                .submitChange(
                        services.words().of("busy.write"),
                        () -> make(proposed),
                        change -> after(new ChangeState.Done(
                                proposed.wish().key(),
                                change,
                                proposed.preview().leavesDamage())),
                        error -> after(failed(proposed.wish(), error)));
    }

    /** Writes what is left of a change that was cut short. */
    public void finishCutShort() {
        recover("finish", OpenRecovery::finish);
    }

    /** Writes the old content back where a change was cut short. */
    public void takeCutShortBack() {
        recover("reverse", OpenRecovery::takeBack);
    }

    private static ChangeState failed(Wish wish, CardException error) {
        return new ChangeState.Failed(
                wish.key(),
                error,
                error.isRefusedFor(NextStep.Allow.IN_PLACE) ? Optional.of(wish.inPlace(true)) : Optional.empty());
    }

    private void after(ChangeState next) {
        state.set(next);
        changed.run();
    }

    private ChangePreview changeable(Wish wish) throws CardException {
        CardNames.refuseToChange(card.card());
        return preview(wish);
    }

    /** Works out what a wish would do, on the thread that calls; nothing is written. */
    ChangePreview preview(Wish wish) throws CardException {
        try (ProposedChange change = wish.propose(services.workplace(), card, false)) {
            return ChangePreview.of(change);
        } catch (IOException e) {
            throw told(e);
        }
    }

    private ChangeView make(ChangeState.Proposed shown) throws CardException {
        try (ProposedChange change = shown.wish().propose(services.workplace(), card, true)) {
            if (!ChangePreview.of(change).isSameAs(shown.preview())) {
                throw CardException.refused(
                        "the card is not as it was when the change was worked out",
                        "Look at it again: it may be another card, or something else wrote to it.");
            }
            return change.apply();
        } catch (IOException e) {
            throw told(e);
        }
    }

    /** One way to bring a change that was cut short to an end. */
    @FunctionalInterface
    private interface Way {
        ChangeView go(OpenRecovery recovery) throws CardException;
    }

    private void recover(String key, Way way) {
        if (!(state.get() instanceof ChangeState.CutShort)) {
            return;
        }
        state.set(new ChangeState.Making(key));
        services.bench()
                .submitChange(
                        services.words().of("busy.write"),
                        () -> recover(services.workplace(), way),
                        change -> after(new ChangeState.Done(key, change, false)),
                        error -> after(new ChangeState.Failed(key, error, Optional.empty())));
    }

    private ChangeView recover(Workplace workplace, Way way) throws CardException {
        try (OpenRecovery recovery = new RecoverJob(workplace).begin(card)) {
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
