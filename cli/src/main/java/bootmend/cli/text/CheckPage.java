package bootmend.cli.text;

import bootmend.cli.outcome.CommandWords;
import bootmend.finding.Finding;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.page.Amount;
import bootmend.page.CheckWords;
import bootmend.view.CardView;
import bootmend.view.CheckView;
import java.util.List;

/** Prints what a check of a card found, the heaviest first, and the verdict last. */
public final class CheckPage {

    private final Screen screen;

    public CheckPage(Screen screen) {
        this.screen = screen;
    }

    public void print(CheckView view) {
        CardView card = view.card();
        field("card", card.card() + " (" + card.kind() + ", " + Amount.size(card.bytes()) + ")");
        if (card.partition().isThere()) {
            field(
                    "label, serial",
                    (card.partition().label().isEmpty()
                                    ? "no label"
                                    : card.partition().label()) + ", "
                            + card.partition().serial());
        }
        field(
                "config file",
                card.config()
                        .map(config -> config.path() + ", sha256 " + config.sha256())
                        .orElse("none that can be read"));
        field("boards", CheckWords.boards(view));
        screen.blank();
        Finding.byRule(view.findings()).forEach((rule, findings) -> group(rule, findings, view));
        screen.line("bold", CheckWords.verdict(view));
    }

    private void group(Rule rule, List<Finding> findings, CheckView view) {
        screen.line(style(rule.heaviest()), rule.heaviest().word() + ": " + rule.id());
        for (Finding finding : findings) {
            screen.line(
                    "  " + finding.where().words() + ": " + finding.what() + CheckWords.boards(finding, view.boards()));
        }
        inner("means", rule.meaning());
        inner("do", CommandWords.about(view.card().card()).remedy(rule.remedy(), rule.steps()));
        inner("source", rule.source());
        screen.blank();
    }

    private static String style(Severity severity) {
        return switch (severity) {
            case BLOCKER -> "bold,fg(red)";
            case WARNING -> "bold,fg(yellow)";
            case NOTE -> "bold";
        };
    }

    private void inner(String name, String text) {
        screen.paragraph("    " + name, 12, text);
    }

    private void field(String name, String text) {
        screen.paragraph(name, 16, text);
    }
}
