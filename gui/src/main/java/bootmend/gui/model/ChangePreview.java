package bootmend.gui.model;

import bootmend.finding.Finding;
import bootmend.operation.LineChange;
import bootmend.operation.PlanView;
import bootmend.operation.ProposedChange;
import bootmend.view.CardView;
import bootmend.view.ConfigView;
import java.util.List;

/**
 * What a change would do to a card, as it is shown before anything is written.
 *
 * @param before the card as it is
 * @param lines the config file's lines that change
 * @param findings what a repair found; empty for anything else
 * @param questions what is to be agreed to first, each on its own
 * @param nothing whether the card already is as wanted
 */
public record ChangePreview(
        CardView before,
        List<LineChange> lines,
        List<Finding> findings,
        List<String> questions,
        PlanView plan,
        boolean nothing) {

    static ChangePreview of(ProposedChange change) {
        return new ChangePreview(
                change.card(),
                change.lines(),
                change.findings(),
                change.questions(),
                change.plan(),
                change.isNothing());
    }

    /** Whether it does the same to the same card: the one that was shown is the one that is made. */
    boolean isSameAs(ChangePreview other) {
        return before.partition().equals(other.before.partition())
                && before.config()
                        .map(ConfigView::sha256)
                        .equals(other.before.config().map(ConfigView::sha256))
                && lines.equals(other.lines)
                && findings.equals(other.findings)
                && questions.equals(other.questions)
                && plan.equals(other.plan);
    }

    /** Whether something is wrong with the card that the change does not mend. */
    public boolean leavesDamage() {
        return findings.stream().anyMatch(finding -> !finding.isRepaired());
    }
}
