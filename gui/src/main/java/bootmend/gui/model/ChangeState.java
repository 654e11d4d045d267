package bootmend.gui.model;

import bootmend.CardException;
import bootmend.operation.ChangeOrder;
import bootmend.operation.Made;
import bootmend.operation.ProposedChange;
import bootmend.view.InterruptedChange;
import bootmend.view.RecoveryView;
import java.util.Optional;

/** How far a change to the card has come. */
public sealed interface ChangeState {

    /** Nothing is wanted. */
    record Idle() implements ChangeState {}

    /** It is worked out; nothing is written meanwhile. */
    record WorkingOut(ChangeOrder order) implements ChangeState {}

    /** It is worked out and waits for the user's word. */
    record Proposed(ProposedChange change) implements ChangeState {}

    /** The card already is as wanted. */
    record Nothing(ProposedChange change) implements ChangeState {}

    /**
     * A change that was interrupted waits to be finished or undone; nothing else can be done to the card before.
     *
     * @param named the id of its record, where the user said that it is this card's
     */
    record Interrupted(RecoveryView recovery, Optional<String> named) implements ChangeState {}

    /**
     * A change was interrupted, and only the user can say which is this card's; nothing else can be done to it before.
     *
     * @param problem why the one that was named last cannot be this card's
     */
    record Unclear(InterruptedChange.Unclear waiting, Optional<CardException> problem) implements ChangeState {}

    /** Whether a change that was interrupted comes before any other. */
    default boolean isWaiting() {
        return this instanceof Interrupted || this instanceof Unclear;
    }

    /** It is being written and read back; it cannot be stopped now. */
    record Making(String key) implements ChangeState {}

    /**
     * It was made.
     *
     * @param key of the request, or {@code finish} or {@code reverse} for a change that had been interrupted
     * @param made how, which is what may be said of the card
     * @param leavesDamage whether the card still has something wrong that a repair leaves
     */
    record Done(String key, Made made, boolean leavesDamage) implements ChangeState {}

    /**
     * It could not be worked out or not be made.
     *
     * @param despite the same order with the risk taken that kept it from being worked out, where there is one to take
     */
    record Failed(String key, CardException error, Optional<ChangeOrder> despite) implements ChangeState {}
}
