package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootTables;
import bootmend.boot.Depth;
import bootmend.card.OpenCard;
import bootmend.card.RawCard;
import bootmend.change.Repair;
import bootmend.change.RepairPlanner;
import bootmend.finding.Finding;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Looks for damage on a card and repairs what can be repaired without guessing. */
record RepairWork(Work work, ChangeRequest.Repair request) implements WorkOut {

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        RawCard raw = card.raw("repaired");
        Repair repair = new RepairPlanner(
                        raw.window(),
                        raw.volumeStart(),
                        work.written(),
                        work.order().accepts(Allow.IN_PLACE))
                .plan(request.freeLost());
        List<Finding> findings = new ArrayList<>(card.tableFindings());
        findings.addAll(repair.findings());
        return Worked.of(new CardViews(work.workplace()).of(card), repair.plan())
                .finding(findings)
                .leaving(NotRepaired.of(BootDiagnosis.of(
                        card.bootCard(),
                        BoardFacts.none(),
                        new BootTables(work.workplace().tables()),
                        Depth.CONTENTS)));
    }
}
