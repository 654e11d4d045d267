package bootmend.operation;

import bootmend.CardException;
import bootmend.card.OpenCard;
import bootmend.card.RawCard;
import bootmend.change.Plan;
import bootmend.change.Repair;
import bootmend.change.RepairPlanner;
import bootmend.finding.Finding;
import bootmend.request.CardRequest;
import bootmend.view.CardViews;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Looks for damage on a card and mends what can be mended without guessing. */
public final class RepairJob {

    private final Workplace workplace;

    public RepairJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Works the repair out on a card that is only read; it cannot be applied. */
    public ProposedChange preview(CardRequest request, RepairRequest repair) throws CardException {
        return propose(OpenCard.open(workplace.opener(), request, false), repair);
    }

    /** Works the repair out on a card that stays locked until the proposal is closed. */
    public ProposedChange begin(CardRequest request, RepairRequest repair) throws CardException {
        return propose(OpenCard.open(workplace.opener(), request, true), repair);
    }

    private ProposedChange propose(OpenCard card, RepairRequest wanted) throws CardException {
        try {
            RawCard raw = card.raw("repaired");
            RecoverJob.refuseWhenWaiting(card, workplace);
            RepairPlanner planner =
                    new RepairPlanner(raw.window(), raw.volumeStart(), workplace.now(), wanted.inPlace());
            Repair repair = planner.plan(wanted.freeLost());
            Plan plan = repair.plan();
            List<Finding> findings = new ArrayList<>(card.tableFindings());
            findings.addAll(repair.findings());
            return new ProposedChange(
                    card,
                    new CardViews(workplace).of(card),
                    LineDiff.of(plan.files()),
                    findings,
                    plan,
                    () -> card.commit(workplace, plan));
        } catch (CardException | IOException | RuntimeException e) {
            throw ResetJob.closing(card, e);
        }
    }
}
