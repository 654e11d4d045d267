package bootmend.cli.run;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.cli.json.ChangeJson;
import bootmend.cli.option.CardArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.text.FindingsPage;
import bootmend.cli.text.LinePage;
import bootmend.cli.text.Screen;
import bootmend.operation.ChangeView;
import bootmend.operation.EjectJob;
import bootmend.operation.PlanView;
import bootmend.operation.ProposedChange;
import bootmend.page.Amount;
import java.io.IOException;
import java.util.stream.Collectors;

/** Shows a proposed change, asks, makes it, and says what was done. */
final class ChangeRun {

    private final Answer answer;
    private final CardArgument card;
    private final ChangeOptions options;
    private final Question question;

    ChangeRun(Answer answer, CardArgument card, ChangeOptions options, Question question) {
        this.answer = answer;
        this.card = card;
        this.options = options;
        this.question = question;
    }

    /** Works a change out: on a card that is only read, or on one that is held for changing. */
    @FunctionalInterface
    public interface Proposer {
        ProposedChange propose(boolean forChanging) throws CardException;
    }

    /** @param nothing what to say where there is nothing to change */
    int run(Proposer proposer, String nothing) {
        return answer.of(() -> {
            int code = runAndClose(proposer, nothing);
            if (options.eject() && !options.dryRun() && code == ExitCode.DONE) {
                answer.sideScreen().line(new EjectJob().run(card.request()));
            }
            return code;
        });
    }

    private int runAndClose(Proposer proposer, String nothing) throws CardException {
        try (ProposedChange change = proposer.propose(!options.dryRun())) {
            return run(change, nothing);
        } catch (IOException e) {
            throw CardException.unreadable(
                    "the card could not be closed (" + e.getMessage() + ")",
                    "Take the card out and put it back in.",
                    e,
                    NextStep.Plain.SHOW_CARD);
        }
    }

    private int run(ProposedChange change, String nothing) throws CardException {
        Screen screen = answer.sideScreen();
        FindingsPage findings = new FindingsPage(screen);
        findings.print(change.findings());
        int code = change.leavesDamage() ? ExitCode.BLOCKER : ExitCode.DONE;
        if (change.isNothing()) {
            screen.line(change.leavesDamage() ? "Nothing of this can be mended without a guess." : nothing);
            findings.advice(change);
            return finish(ChangeJson.planned(change), code);
        }
        new LinePage(screen).print(change.lines());
        plan(screen, change.plan());
        findings.caution(change);
        change.questions().forEach(each -> screen.line("bold", "Caution: " + each));
        if (options.dryRun()) {
            screen.line("Nothing was written (--dry-run).");
            findings.advice(change);
            return finish(ChangeJson.planned(change), code);
        }
        if (!options.yes() && !agreed(change)) {
            screen.line("Nothing was written.");
            return ExitCode.REFUSED;
        }
        ChangeView done = change.apply();
        done(screen, change, done);
        findings.advice(change);
        return finish(ChangeJson.made(change, done), code);
    }

    private boolean agreed(ProposedChange change) throws CardException {
        for (String each : change.questions()) {
            if (!question.ask(each + " Go on?")) {
                return false;
            }
        }
        return question.ask("Make this change?");
    }

    private int finish(ChangeJson document, int code) {
        if (card.json()) {
            answer.json(document);
        }
        return code;
    }

    private static void plan(Screen screen, PlanView plan) {
        if (plan.ofFolder()) {
            screen.line("To write: " + String.join(", ", plan.files())
                    + "; each as a new file beside the old, forced and " + "renamed over it.");
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
                            + "in the middle can only be mended from the undo record on this computer.");
        }
    }

    private static void done(Screen screen, ProposedChange change, ChangeView done) {
        if (change.plan().ofFolder()) {
            screen.line(
                    "bold", "Done: " + change.plan().title() + ". Every file was forced to the card and read back.");
            screen.line("Undo record: " + done.undoRecord());
            screen.line("The card is still mounted: eject it in the system before you take it out.");
            return;
        }
        screen.line(
                "bold",
                "Done: " + change.plan().title() + ". Every sector was forced to the card and read back"
                        + (done.secondReader() ? ", and a second reader found the file as planned." : "."));
        screen.line("Undo record: " + done.undoRecord());
        screen.line("The card is safe to take out.");
    }
}
