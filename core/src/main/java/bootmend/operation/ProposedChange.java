package bootmend.operation;

import bootmend.CardException;
import bootmend.card.OpenCard;
import bootmend.change.Committed;
import bootmend.change.Plan;
import bootmend.finding.Finding;
import bootmend.view.CardView;
import java.io.Closeable;
import java.io.IOException;
import java.util.List;

/** A change that is worked out and not made yet; it holds the card open, and locked when it was begun for changing. */
public final class ProposedChange implements Closeable {

    /** How a plan is carried out. */
    @FunctionalInterface
    interface Commit {
        Committed run() throws CardException;
    }

    private final OpenCard card;
    private final CardView view;
    private final List<LineChange> lines;
    private final List<Finding> findings;
    private final List<String> questions;
    private final Plan plan;
    private final Commit commit;

    ProposedChange(OpenCard card, CardView view, List<LineChange> lines, Plan plan, Commit commit) {
        this(card, view, lines, List.of(), plan, commit);
    }

    /** @param findings what a repair found on the card */
    ProposedChange(
            OpenCard card, CardView view, List<LineChange> lines, List<Finding> findings, Plan plan, Commit commit) {
        this(card, view, lines, findings, List.of(), plan, commit);
    }

    /** @param questions what is to be asked before the change itself, each on its own */
    ProposedChange(
            OpenCard card,
            CardView view,
            List<LineChange> lines,
            List<Finding> findings,
            List<String> questions,
            Plan plan,
            Commit commit) {
        this.findings = List.copyOf(findings);
        this.questions = List.copyOf(questions);
        this.card = card;
        this.view = view;
        this.lines = List.copyOf(lines);
        this.plan = plan;
        this.commit = commit;
    }

    /** The card as it is before the change. */
    public CardView card() {
        return view;
    }

    /** The lines that change, in the files' order. */
    public List<LineChange> lines() {
        return lines;
    }

    /** What is wrong with the card, each with whether this change mends it; empty for anything but a repair. */
    public List<Finding> findings() {
        return findings;
    }

    /** What a user should say yes to before the change itself, each a question of its own. */
    public List<String> questions() {
        return questions;
    }

    /** Whether something is wrong that this change does not mend. */
    public boolean leavesDamage() {
        return findings.stream().anyMatch(finding -> !finding.isRepaired());
    }

    public PlanView plan() {
        return PlanView.of(plan);
    }

    /** Whether the card already is as wanted. */
    public boolean isNothing() {
        return plan.isEmpty();
    }

    /**
     * Makes the change: undo record, ordered writes, forces, read-back.
     *
     * @throws CardException of kind REFUSED when nothing was written, of kind CUT_SHORT when something may have been
     * @throws IllegalStateException when this is only a preview
     */
    public ChangeView apply() throws CardException {
        if (!card.isForChanging()) {
            throw new IllegalStateException("a preview is not applied");
        }
        Committed done = commit.run();
        return new ChangeView(done.record().file().toString(), true, done.secondReaderAgrees());
    }

    @Override
    public void close() throws IOException {
        card.close();
    }
}
