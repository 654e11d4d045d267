package bootmend.cli.text;

import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootChain;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootLink;
import bootmend.boot.Found;
import bootmend.boot.LinkState;
import bootmend.boot.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Prints why a card boots or does not, boards that come to the same together. */
public final class DiagnosisPage {

    /** What a board's chain comes to, whichever files it is made of. */
    private record Outcome(BootChain.Start start, Verdict verdict) {}

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
        Map<Outcome, List<BootChain>> groups = new LinkedHashMap<>();
        for (BoardDiagnosis board : diagnosis.boards()) {
            add(groups, board.chain());
            board.tryOnce().ifPresent(chain -> add(groups, chain));
        }
        boolean alone = diagnosis.boards().size() == 1;
        groups.forEach((outcome, chains) -> group(outcome, chains, alone));
        diagnosis.versions().forEach(version -> screen.line("Firmware " + version.file() + ": " + version.words()));
    }

    /** What no card tells, said once however many cards were looked at. */
    public static void notTold(Screen screen, BootDiagnosis diagnosis) {
        screen.blank();
        diagnosis.notTold().forEach(screen::line);
    }

    private static void add(Map<Outcome, List<BootChain>> groups, BootChain chain) {
        groups.computeIfAbsent(new Outcome(chain.start(), chain.verdict()), none -> new ArrayList<>())
                .add(chain);
    }

    /** @param whole whether every link is told of a board that gets through */
    private void group(Outcome outcome, List<BootChain> chains, boolean whole) {
        screen.blank();
        String once = outcome.start() == BootChain.Start.TRY_ONCE ? ", try-once start" : "";
        String boards = chains.stream().map(BootChain::board).collect(Collectors.joining(" "));
        screen.line("bold", boards + once + ": " + verdict(outcome.verdict()));
        if (whole || !(outcome.verdict() instanceof Verdict.Boots)) {
            links(chains.get(0), chains.size() > 1);
        }
        if (outcome.verdict() instanceof Verdict.Stops stops) {
            screen.line("Cause: " + stops.cause().sentence() + " ("
                    + stops.cause().origin().words() + ")");
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
        String found = link.found().stream().map(DiagnosisPage::words).collect(Collectors.joining("; "));
        return List.of(
                link.kind().word(),
                link.state().word(),
                link.state() == LinkState.WHOLE && !found.isEmpty() ? found : link.why());
    }

    private static String words(Found found) {
        String line = found.line().isPresent() ? " line " + found.line().getAsInt() : "";
        String bytes = found.bytes().isPresent() ? ", " + found.bytes().getAsLong() + " bytes" : "";
        String check = found.check().isEmpty() ? "" : ": " + found.check();
        return found.what() + line + bytes + check;
    }

    private static String verdict(Verdict verdict) {
        if (verdict instanceof Verdict.Boots boots) {
            return boots.aboveStock().isEmpty()
                    ? "boots as far as the card can tell; try the board, its supply and its own boot memory next."
                    : "boots as far as the card can tell; its settings are above stock ("
                            + String.join(", ", boots.aboveStock()) + "): reset is the next step.";
        }
        if (verdict instanceof Verdict.Stops stops) {
            return "stops at the " + stops.cause().link().word() + ".";
        }
        Verdict.Unknown unknown = (Verdict.Unknown) verdict;
        return "cannot be told: the " + unknown.link().word() + " hangs on what the card does not say, " + unknown.why()
                + ".";
    }
}
