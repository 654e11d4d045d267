package bootmend.cli.run;

import bootmend.CardException;
import bootmend.cli.json.ChangeJson;
import bootmend.cli.option.CardArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.text.FindingsPage;
import bootmend.cli.text.KeepWords;
import bootmend.cli.text.MadeWords;
import bootmend.cli.text.Screen;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeOutcome;
import bootmend.operation.EjectJob;
import bootmend.operation.ProposedChange;
import bootmend.workplace.Workplace;

/** Shows a change to one card, asks, makes it, and says what was done. */
final class ChangeRun implements ChangeOutcome.Cases<Integer> {

    private final Answer answer;
    private final CardArgument card;
    private final ChangeOptions options;
    private final Question question;
    private final String nothing;
    private final Screen screen;
    private final FindingsPage findings;
    private final ChangePreview preview;

    /** @param nothing what to say where there is nothing to change */
    ChangeRun(Answer answer, CardArgument card, ChangeOptions options, Question question, String nothing) {
        this.answer = answer;
        this.card = card;
        this.options = options;
        this.question = question;
        this.nothing = nothing;
        this.screen = answer.sideScreen();
        this.findings = new FindingsPage(screen);
        this.preview = new ChangePreview(screen);
    }

    /** The exit code. */
    int run(Workplace workplace, ChangeOrder order) {
        return answer.of(() -> {
            if (options.before().isPresent() && !options.dryRun()) {
                new KeepWords(screen)
                        .printShort(new CopyFirst(workplace, options.before().get()).keep(card.request()));
            }
            ChangeOutcome outcome =
                    outcome(new ChangeOperation(workplace), order).orThrow();
            int code = outcome.match(this);
            if (card.json() && code != ExitCode.REFUSED) {
                answer.json(ChangeJson.of(outcome));
            }
            if (options.eject() && !options.dryRun() && code == ExitCode.DONE) {
                screen.line(new EjectJob().run(card.request()));
            }
            return code;
        });
    }

    private ChangeOutcome outcome(ChangeOperation operation, ChangeOrder order) throws CardException {
        if (!options.dryRun()) {
            return operation.make(card.request(), order, this::approved);
        }
        ProposedChange change = operation.workOut(card.request(), order);
        if (!change.isNothing()) {
            preview.print(change);
        }
        return change.leave();
    }

    private boolean approved(ProposedChange change) throws CardException {
        preview.print(change);
        if (!screen.isWhole()) {
            throw CardException.unreadable(
                    "the change could not be shown, so it was not made",
                    "Nothing was written. Make room where the answer goes, then try again.");
        }
        if (options.yes()) {
            return true;
        }
        for (String each : change.questions()) {
            if (!question.ask(each + " Go on?")) {
                return false;
            }
        }
        return question.ask("Make this change?");
    }

    @Override
    public Integer written(ChangeOutcome.Written outcome) {
        new MadeWords(outcome.change().plan().title()).print(screen, outcome.made());
        findings.advice(outcome.change());
        return code(outcome.change());
    }

    @Override
    public Integer nothingToDo(ChangeOutcome.NothingToDo outcome) {
        ProposedChange change = outcome.change();
        findings.print(change.findings());
        screen.line(
                change.leavesDamage()
                        ? "Nothing of this can be repaired without a guess."
                        : change.notRepaired().isEmpty()
                                ? nothing
                                : "A repair finds nothing that is its own to put right.");
        findings.advice(change);
        return code(change);
    }

    @Override
    public Integer notMade(ChangeOutcome.NotMade outcome) {
        if (!options.dryRun()) {
            screen.line("Nothing was written.");
            return ExitCode.REFUSED;
        }
        screen.line("Nothing was written (--dry-run).");
        findings.advice(outcome.change());
        return code(outcome.change());
    }

    @Override
    public Integer refused(ChangeOutcome.Refused outcome) {
        return ExitCode.of(outcome.error());
    }

    @Override
    public Integer interrupted(ChangeOutcome.Interrupted outcome) {
        return ExitCode.of(outcome.error());
    }

    private static int code(ProposedChange change) {
        return change.leavesDamage() ? ExitCode.BLOCKER : ExitCode.DONE;
    }
}
