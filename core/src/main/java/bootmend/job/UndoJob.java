package bootmend.job;

import bootmend.CardException;
import bootmend.change.FileChange;
import bootmend.change.Plan;
import bootmend.change.TakeBack;
import bootmend.change.UndoRecord;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Takes the last change to a card back. */
public final class UndoJob {

    private final Workplace workplace;

    public UndoJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Works the change out on a card that is only read; it cannot be applied. */
    public ProposedChange preview(CardRequest request, boolean inPlace) throws CardException {
        return propose(OpenCard.open(workplace.opener(), request, false), request, inPlace);
    }

    /** Works the change out on a card that stays locked until the proposal is closed. */
    public ProposedChange begin(CardRequest request, boolean inPlace) throws CardException {
        return propose(OpenCard.open(workplace.opener(), request, true), request, inPlace);
    }

    private ProposedChange propose(OpenCard card, CardRequest request, boolean inPlace) throws CardException {
        try {
            TakeBack takeBack = new TakeBack(card.device(), card.volume(), card.id());
            UndoRecord record = takeBack.last(workplace.store()).orElseThrow(() -> CardException.refused(
                    "there is no change to this card that this computer could take back",
                    "Undo records are kept on the computer that made the change; use that one, or set BOOTMEND_HOME to "
                    + "where they are."));
            Plan plan = takeBack.plan(record, workplace.now(), inPlace);
            List<LineChange> lines = new ArrayList<>();
            for (FileChange change : plan.files()) {
                lines.addAll(LineDiff.of(change.path(), change.before(), change.after()));
            }
            return new ProposedChange(card, new CardViews(workplace).of(card), lines, plan, () -> takeBack.commit(
                    workplace.committer(), request.card().toString(), plan, record));
        } catch (IOException | RuntimeException e) {
            throw ResetJob.closing(card, e);
        }
    }
}
