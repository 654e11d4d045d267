package bootmend.cli.text;

import bootmend.finding.Finding;
import bootmend.page.Amount;
import bootmend.page.CheckWords;
import bootmend.page.FindingGroup;
import bootmend.view.CardView;
import bootmend.view.CheckView;
import java.util.List;
import java.util.Locale;

/** Prints what a check of a card found, the heaviest first, and the verdict last. */
public final class CheckPage {

    private final Screen screen;

    public CheckPage(Screen screen) {
        this.screen = screen;
    }

    public void print(CheckView view) {
        CardView card = view.card();
        field("card", card.card() + " (" + card.kind() + ", " + Amount.size(card.bytes()) + ")");
        field(
                "label, serial",
                (card.partition().label().isEmpty()
                                ? "no label"
                                : card.partition().label()) + ", "
                        + card.partition().serial());
        field(
                "config file",
                card.config()
                        .map(config -> config.path() + ", sha256 " + config.sha256())
                        .orElse("none that can be read"));
        field("boards", CheckWords.boards(view));
        screen.blank();
        FindingGroup.of(view.findings()).forEach(group -> group(group, view.boards()));
        screen.line("bold", CheckWords.verdict(view));
    }

    private void group(FindingGroup group, List<String> all) {
        screen.line(style(group), group.severity().word() + ": " + group.rule());
        for (Finding finding : group.findings()) {
            screen.line("  " + finding.where().words() + ": " + finding.what() + CheckWords.boards(finding, all));
        }
        inner("means", group.meaning());
        inner("do", group.remedy());
        inner("source", group.source());
        screen.blank();
    }

    private static String style(FindingGroup group) {
        return switch (group.severity()) {
            case BLOCKER -> "bold,fg(red)";
            case WARNING -> "bold,fg(yellow)";
            case NOTE -> "bold";
        };
    }

    private void inner(String name, String text) {
        screen.line(String.format(Locale.ROOT, "    %-8s%s", name, text));
    }

    private void field(String name, String text) {
        screen.line(String.format(Locale.ROOT, "%-16s%s", name, text));
    }
}
