package bootmend.operation;

import bootmend.CardException;
import bootmend.card.JobErrors;
import bootmend.card.LoneConfig;
import bootmend.card.OpenCard;
import bootmend.change.Committed;
import bootmend.change.FileChange;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * Changes cards: works a request out on a card that is only read, or works it out, has it approved and makes it on one that
 * is held for that long.
 *
 * <p>Whatever was shown is what is made: a change that was worked out before is worked out again on the card that is held,
 * and refused unless it comes to the same bytes.
 */
public final class ChangeOperation {

    private final Workplace workplace;

    public ChangeOperation(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Whether a request is about a config file on its own rather than a card. */
    public static boolean isOfConfigFile(CardRequest request) {
        return LoneConfig.isNamed(request);
    }

    /** Decides on a change while its card is held. */
    @FunctionalInterface
    public interface Approval {

        /** Whoever asks for a change has agreed to whatever it comes to. */
        Approval GIVEN = change -> true;

        /** Whether the change is to be made; asked only where there is something to do. */
        boolean of(ProposedChange change) throws CardException;
    }

    /**
     * Works a request out; nothing is written and the card is not held.
     *
     * @throws CardException where it cannot be done
     */
    public ProposedChange workOut(CardRequest card, ChangeOrder order) throws CardException {
        try (OpenCard open = OpenCard.open(workplace.opener(), card, false)) {
            return workOut(open, card, order, workplace.now());
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /**
     * A change to a config file on its own.
     *
     * @param text the file's bytes after it
     */
    public record TextChange(ProposedChange change, byte[] text) {}

    /**
     * Works a request out on a config file on its own; nothing is written.
     *
     * @throws CardException where it cannot be done, or it is about a card
     */
    public TextChange workOutText(CardRequest file, ChangeOrder order) throws CardException {
        try (OpenCard open = OpenCard.open(workplace.opener(), file, false)) {
            if (!(open instanceof LoneConfig config)) {
                throw CardException.usage("it is a card", "Name a config file for that.");
            }
            ProposedChange change = workOut(open, file, order, workplace.now());
            return new TextChange(
                    change,
                    change.worked().plan().files().stream()
                            .map(FileChange::after)
                            .findFirst()
                            .orElse(config.text()));
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /**
     * Works a request out on the card, which is held from there on, has it approved and makes it: undo record, ordered
     * writes, syncs, read-back.
     *
     * @throws CardException where it cannot be worked out
     */
    public ChangeOutcome make(CardRequest card, ChangeOrder order, Approval approval) throws CardException {
        return make(card, order, workplace.now(), Optional.empty(), approval);
    }

    /**
     * Makes the change that was shown, and no other.
     *
     * @throws CardException where it cannot be worked out any more
     */
    public ChangeOutcome make(ProposedChange shown) throws CardException {
        return make(shown.card(), shown.order(), shown.written(), Optional.of(shown), Approval.GIVEN);
    }

    private ChangeOutcome make(
            CardRequest card,
            ChangeOrder order,
            LocalDateTime written,
            Optional<ProposedChange> shown,
            Approval approval)
            throws CardException {
        ChangeOutcome outcome = null;
        try (OpenCard open = OpenCard.open(workplace.opener(), card, true)) {
            ProposedChange change = workOut(open, card, order, written);
            outcome = shown.isPresent() && !shown.get().sameAs(change)
                    ? new ChangeOutcome.Refused(change, otherThanShown())
                    : make(open, change, approval);
            return outcome;
        } catch (IOException e) {
            throw outcome == null ? JobErrors.unreadable(e) : notClosed(e);
        }
    }

    private ChangeOutcome make(OpenCard card, ProposedChange change, Approval approval) throws CardException {
        if (change.isNothing()) {
            return new ChangeOutcome.NothingToDo(change);
        }
        if (!approval.of(change)) {
            return new ChangeOutcome.NotMade(change);
        }
        try {
            Worked worked = change.worked();
            Committed done = worked.undoes().isPresent()
                    ? card.commitBack(workplace, worked.plan(), worked.undoes().get())
                    : card.commit(workplace, worked.plan());
            return new ChangeOutcome.Written(change, Made.of(done));
        } catch (CardException e) {
            return e.kind() == CardException.Kind.INTERRUPTED
                    ? new ChangeOutcome.Interrupted(change, e)
                    : new ChangeOutcome.Refused(change, e);
        }
    }

    private ProposedChange workOut(OpenCard card, CardRequest request, ChangeOrder order, LocalDateTime written)
            throws CardException, IOException {
        RecoverJob.refuseWhenWaiting(card, workplace);
        Worked worked = order.request()
                .match(new WorkOuts(new Work(workplace, order, written)))
                .on(card);
        return new ProposedChange(request, order, written, worked, workplace.home());
    }

    private static CardException otherThanShown() {
        return CardException.refused(
                "the card is not as it was when the change was worked out",
                "Look at it again: it may be another card, or something else wrote to it.");
    }

    private static CardException notClosed(IOException e) {
        return CardException.unreadable(
                "the card could not be closed (" + e.getMessage() + ")",
                "Take the card out, put it back in and look at it again.",
                e);
    }
}
