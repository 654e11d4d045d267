package bootmend.cli.run;

import bootmend.cli.text.FindingsPage;
import bootmend.cli.text.LinePage;
import bootmend.cli.text.Screen;
import bootmend.operation.PlanView;
import bootmend.operation.ProposedChange;
import bootmend.page.Amount;
import java.util.stream.Collectors;

/** Prints what a change would do, before it is made. */
final class ChangePreview {

    private final Screen screen;
    private final FindingsPage findings;

    ChangePreview(Screen screen) {
        this.screen = screen;
        this.findings = new FindingsPage(screen);
    }

    /** All of it. */
    void print(ProposedChange change) {
        findings.print(change.findings());
        content(change);
        plan(change);
        change.notes().forEach(screen::line);
        findings.caution(change);
        change.questions().forEach(each -> screen.line("bold", "Caution: " + each));
    }

    /** What becomes of the lines, and what a check finds in that. */
    void content(ProposedChange change) {
        new LinePage(screen).print(change.files());
        findings.brings(change);
    }

    private void plan(ProposedChange change) {
        PlanView plan = change.plan();
        if (!change.before().partition().isThere()) {
            screen.line("To write: " + change.before().card()
                    + ", as a new file beside the old, synced and renamed over it.");
            return;
        }
        if (plan.ofFolder()) {
            screen.line("To write: " + String.join(", ", plan.files())
                    + "; each as a new file beside the old (" + String.join(", ", plan.beside())
                    + "), synced and renamed over it.");
            return;
        }
        String kinds = plan.sectorsByKind().entrySet().stream()
                .map(kind -> kind.getValue() + " " + kind.getKey())
                .collect(Collectors.joining(", "));
        screen.line("To write: " + Amount.count(plan.sectorsWritten(), "sector") + " (" + kinds + ") in "
                + Amount.count(plan.steps().size(), "step") + ".");
        if (plan.inPlace()) {
            screen.line(
                    "bold",
                    "Caution: the boot partition is full, so the file is overwritten in place; a cut "
                            + "in the middle can only be undone from the undo record on this computer.");
        }
    }
}
