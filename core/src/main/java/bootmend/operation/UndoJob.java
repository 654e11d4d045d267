package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.OpenCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.change.History;
import bootmend.change.Plan;
import bootmend.change.UndoRecord;
import bootmend.request.CardRequest;
import bootmend.view.CardViews;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.OptionalInt;

/** Takes changes to a card back: the last one, or all after a chosen one. */
public final class UndoJob {

    private final Workplace workplace;

    public UndoJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Works the change out on a card that is only read; it cannot be applied. */
    public ProposedChange preview(CardRequest request, UndoRequest undo) throws CardException {
        return propose(OpenCard.open(workplace.opener(), request, false), undo);
    }

    /** Works the change out on a card that stays locked until the proposal is closed. */
    public ProposedChange begin(CardRequest request, UndoRequest undo) throws CardException {
        return propose(OpenCard.open(workplace.opener(), request, true), undo);
    }

    private ProposedChange propose(OpenCard card, UndoRequest undo) throws CardException {
        try {
            RecoverJob.refuseWhenWaiting(card, workplace);
            History history = card.history(workplace.store());
            return undo.to().isPresent()
                    ? backTo(card, history, undo.to(), undo.inPlace())
                    : last(card, history, undo.inPlace());
        } catch (CardException | IOException | RuntimeException e) {
            throw ResetJob.closing(card, e);
        }
    }

    private ProposedChange last(OpenCard card, History history, boolean inPlace) throws CardException, IOException {
        UndoRecord record = history.lastToTakeBack()
                .orElseThrow(() -> CardException.refused(
                        "there is no change to this card that this computer could take back",
                        "Undo records are kept on the computer that made the change; use that one, or the data folder where they are.",
                        NextStep.Plain.SET_DATA_FOLDER));
        Plan plan = card.takeBack(record, workplace, inPlace);
        return new ProposedChange(
                card,
                new CardViews(workplace).of(card),
                LineDiff.of(plan.files()),
                plan,
                () -> card.commitBack(workplace, plan, record));
    }

    private ProposedChange backTo(OpenCard card, History history, OptionalInt to, boolean inPlace)
            throws CardException, IOException {
        int number = to.getAsInt();
        int last = history.oldestFirst().size();
        if (number < 0 || number > last) {
            String what = "this card's history has no change " + number;
            throw last == 0
                    ? CardException.usage(what, "No change to it was made from this computer.")
                    : CardException.usage(
                            what,
                            "It has 1 to " + last + ", and 0 stands for the time before the first.",
                            NextStep.Plain.LIST_CHANGES);
        }
        FilePlanner planner = card.planner(workplace, inPlace);
        for (FileChange file : history.filesAfter(number)) {
            planner.put(file);
        }
        Plan plan = planner.plan(number == 0 ? "back to before change 1" : "back to after change " + number);
        return new ProposedChange(
                card,
                new CardViews(workplace).of(card),
                LineDiff.of(plan.files()),
                plan,
                () -> card.commit(workplace, plan));
    }
}
