package bootmend.cli.text;

import bootmend.boot.BootChain;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootLink;
import bootmend.boot.BootOutcome;
import bootmend.boot.Verdict;
import bootmend.page.BootWords;
import java.util.List;

/** Prints why a card boots or does not, boards that come to the same together. */
public final class DiagnosisPage {

    private final Screen screen;
    private final String card;

    public DiagnosisPage(Screen screen, String card) {
        this.screen = screen;
        this.card = card;
    }

    public void print(BootDiagnosis diagnosis) {
        screen.line("bold", card);
        if (diagnosis.meantForNone()) {
            screen.line("Nothing on this card tells which board it is for; every board was looked at.");
        }
        boolean alone = diagnosis.boards().size() == 1;
        BootOutcome.of(diagnosis).forEach(outcome -> group(outcome, alone));
        diagnosis.versions().forEach(version -> screen.line("Firmware " + version.file() + ": " + version.words()));
    }

    /** What no card tells, said once however many cards were looked at. */
    public static void notTold(Screen screen, BootDiagnosis diagnosis) {
        screen.blank();
        diagnosis.notTold().forEach(screen::line);
    }

    /** @param whole whether every link is told of a board that gets through */
    private void group(BootOutcome outcome, boolean whole) {
        screen.blank();
        screen.line("bold", BootWords.boards(outcome) + ": " + BootWords.verdict(outcome.verdict()));
        if (whole || !(outcome.verdict() instanceof Verdict.Boots)) {
            links(outcome.first(), outcome.chains().size() > 1);
        }
        if (outcome.verdict() instanceof Verdict.Stops stops) {
            screen.line("Cause: " + BootWords.cause(stops.cause()));
            screen.line(
                    "bold", "Next: " + new RemedyWords(card).of(stops.cause().remedy()));
        } else if (outcome.verdict() instanceof Verdict.Boots boots
                && !boots.aboveStock().isEmpty()) {
            screen.line("bold", "Next, where the board does not start all the same: bootmend reset " + card);
        }
    }

    private void links(BootChain chain, boolean oneOfMany) {
        if (oneOfMany) {
            screen.line("Link by link on " + chain.board() + ":");
        }
        screen.table(
                List.of("link", "state", "what it rests on"),
                chain.links().stream().map(DiagnosisPage::row).toList());
    }

    private static List<String> row(BootLink link) {
        return List.of(link.kind().word(), link.state().word(), BootWords.restsOn(link));
    }
}
