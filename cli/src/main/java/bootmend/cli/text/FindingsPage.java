package bootmend.cli.text;

import bootmend.finding.Finding;
import bootmend.finding.Severity;
import bootmend.operation.NotRepaired;
import bootmend.operation.ProposedChange;
import java.util.List;

/** Prints what a repair found, and what is left to do by hand. */
public final class FindingsPage {

    private static final int MOST_CAUSES = 3;

    private final Screen screen;

    public FindingsPage(Screen screen) {
        this.screen = screen;
    }

    public void print(List<Finding> findings) {
        for (Finding finding : findings) {
            screen.line("bold", finding.where().words() + ": " + finding.words());
            screen.line(
                    "  " + finding.id() + ", " + (finding.isRepaired() ? "repaired by this repair" : "not repaired"));
        }
        if (!findings.isEmpty()) {
            screen.blank();
        }
    }

    /** What a check finds in the new lines, with what it means. */
    public void brings(ProposedChange change) {
        if (change.brings().isEmpty()) {
            return;
        }
        screen.blank();
        screen.line("What a check finds in it:");
        for (Finding finding : change.brings()) {
            screen.line(
                    finding.severity() == Severity.NOTE ? "" : "bold",
                    finding.severity().word() + ": " + finding.where().words() + ": " + finding.words());
        }
        screen.blank();
    }

    /** What to think of before a damaged card is written to. */
    public void caution(ProposedChange change) {
        if (!change.findings().isEmpty()) {
            screen.line("Caution: if this card holds the only copy of something, make an image of it first and repair "
                    + "that.");
        }
    }

    public void advice(ProposedChange change) {
        if (change.leavesDamage()) {
            screen.line(
                    "bold",
                    "Some of this is left as it is. Make an image of the card before anything else writes to "
                            + "it, copy the files you need off it, and ask someone qualified where they matter.");
        }
        if (change.findings().stream().anyMatch(f -> f.id().equals("lost-clusters") && !f.isRepaired())) {
            screen.line("Lost clusters are freed only with --free-lost, and only while no file may miss them.");
        }
        if (!change.notRepaired().isEmpty()) {
            boot(change);
        }
    }

    /** Whose it is that a board does not start, where it is not a repair's. */
    private void boot(ProposedChange change) {
        String card = change.before().card();
        screen.blank();
        screen.line("bold", "What a repair does not put right on this card:");
        for (NotRepaired each : change.notRepaired().stream().limit(MOST_CAUSES).toList()) {
            String boards = each.boards().isEmpty()
                    ? ""
                    : "On " + String.join(" ", each.boards()) + " the boot chain stops at the "
                            + each.cause().link().word() + ": ";
            screen.line(boards + each.cause().sentence());
            screen.line("Next: " + new RemedyWords(card).of(each.cause().remedy()));
        }
        screen.exact("Link by link: bootmend diagnose " + card);
    }
}
