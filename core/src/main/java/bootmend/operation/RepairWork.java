package bootmend.operation;

import bootmend.CardException;
import bootmend.CardException.Risk;
import bootmend.card.OpenCard;
import bootmend.card.RawCard;
import bootmend.change.Repair;
import bootmend.change.RepairPlanner;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Looks for damage on a card and repairs what can be repaired without guessing. */
record RepairWork(Work work, ChangeRequest.Repair request) implements WorkOut {

    private static final String TABLE_ID = "partition-table";

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        RawCard raw = card.raw("repaired");
        Repair repair = new RepairPlanner(
                        raw.window(),
                        raw.volumeStart(),
                        work.written(),
                        work.order().accepts(Risk.IN_PLACE))
                .plan(request.freeLost());
        List<FindingView> findings = new ArrayList<>();
        for (String doubt : card.tableDoubts()) {
            findings.add(new FindingView(
                    TABLE_ID, "partition table", doubt + "; a partition table is never touched here", false));
        }
        repair.findings().forEach(finding -> findings.add(FindingView.of(finding)));
        return Worked.of(new CardViews(work.workplace()).of(card), repair.plan())
                .finding(findings);
    }
}
