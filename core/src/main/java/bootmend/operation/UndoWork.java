package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.NextStep.Allow;
import bootmend.card.OpenCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.change.History;
import bootmend.change.UndoRecord;
import bootmend.view.CardViews;
import java.io.IOException;

/** Undoes changes to a card: the last one, or all after a chosen one. */
record UndoWork(Work work, ChangeRequest.Undo request) implements WorkOut {

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        History history = card.history(work.workplace().store());
        return request.to().isPresent() ? backTo(card, history, request.to().getAsInt()) : last(card, history);
    }

    private Worked last(OpenCard card, History history) throws CardException, IOException {
        UndoRecord record = history.lastToUndo()
                .orElseThrow(() -> CardException.refused(
                        "there is no change to this card that this computer could undo",
                        "Undo records are kept on the computer that made the change; use that one, or the data "
                                + "folder where they are.",
                        NextStep.Plain.SET_DATA_FOLDER));
        return Worked.of(
                        new CardViews(work.workplace()).of(card),
                        card.undo(record, work.written(), work.order().accepts(Allow.IN_PLACE)))
                .shown(FileEdit.of(
                        record.plan().files().stream().map(FileChange::reversed).toList()))
                .undoing(record);
    }

    private Worked backTo(OpenCard card, History history, int number) throws CardException, IOException {
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
        FilePlanner planner = work.planner(card);
        for (FileChange file : history.filesAfter(number)) {
            planner.put(file);
        }
        return Worked.of(
                new CardViews(work.workplace()).of(card),
                planner.plan(number == 0 ? "back to before change 1" : "back to after change " + number));
    }
}
