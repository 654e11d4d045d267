package bootmend.job;

import bootmend.CardException;
import bootmend.change.FileChange;
import bootmend.change.Plan;
import bootmend.change.Repair;
import bootmend.change.RepairPlanner;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Looks for damage on a card and mends what can be mended without guessing. */
public final class RepairJob {

    private static final String TABLE_ID = "partition-table";

    private final Workplace workplace;

    public RepairJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Works the repair out on a card that is only read; it cannot be applied. */
    public ProposedChange preview(CardRequest request, RepairRequest repair) throws CardException {
        return propose(OpenCard.open(workplace.opener(), request, false), request, repair);
    }

    /** Works the repair out on a card that stays locked until the proposal is closed. */
    public ProposedChange begin(CardRequest request, RepairRequest repair) throws CardException {
        return propose(OpenCard.open(workplace.opener(), request, true), request, repair);
    }

    private ProposedChange propose(OpenCard card, CardRequest request, RepairRequest wanted) throws CardException {
        try {
            RepairPlanner planner = new RepairPlanner(card.window(), card.choice().partition().start(),
                    workplace.now(), wanted.inPlace());
            Repair repair = planner.plan(wanted.freeLost());
            Plan plan = repair.plan();
            List<FindingView> findings = new ArrayList<>();
            for (String doubt : card.table().doubts()) {
                findings.add(new FindingView(TABLE_ID, "partition table",
                        doubt + "; a partition table is never touched here", false));
            }
            repair.findings().forEach(finding -> findings.add(FindingView.of(finding)));
            return new ProposedChange(card, new CardViews(workplace).of(card), lines(plan), findings, plan,
                    () -> workplace.committer().commit(card.device(), request.card().toString(), plan));
        } catch (IOException | RuntimeException e) {
            throw ResetJob.closing(card, e);
        }
    }

    /** The lines that change; a file that is UTF-16 before has no lines to compare. */
    private static List<LineChange> lines(Plan plan) {
        List<LineChange> lines = new ArrayList<>();
        for (FileChange file : plan.files()) {
            if (!holdsZero(file.before())) {
                lines.addAll(LineDiff.of(file.path(), file.before(), file.after()));
            }
        }
        return lines;
    }

    private static boolean holdsZero(byte[] bytes) {
        for (byte b : bytes) {
            if (b == 0) {
                return true;
            }
        }
        return false;
    }
}
