package bootmend.cli.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.cli.json.ChangeJson;
import bootmend.cli.option.CardArgument;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.run.Question;
import bootmend.cli.text.MadeWords;
import bootmend.cli.text.Screen;
import bootmend.operation.Made;
import bootmend.operation.OpenRecovery;
import bootmend.operation.RecoverJob;
import bootmend.view.RecordedChange;
import bootmend.view.RecoveryView;
import bootmend.workplace.Workplace;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend recover}: a change that was interrupted, finished or undone. */
@Command(
        name = "recover",
        header = "Finish or undo a change that was interrupted.",
        mixinStandardHelpOptions = true,
        description =
                "Finishes a change to this card that was interrupted, or undoes it, from the undo record on this computer. "
                        + "Without --finish or --undo it takes the shorter way. Asks first. A record belongs to the one "
                        + "card that was changed, and never to another written from the same image.",
        footer = {
            "",
            "Examples:",
            "  bootmend recover lab-07.img",
            "  bootmend recover --undo --yes lab-07.img",
            "  bootmend recover --record 20261124-232638-284443-de233307 lab-07.img",
            "  bootmend recover --forget 20261124-232638-284443-de233307"
        })
public final class RecoverCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardArgument card;

    @ArgGroup
    private Way way = new Way();

    @Option(names = "--fixed-disk", description = "Also take a disk that is built in or over 2 TiB.")
    private boolean fixedDisk;

    @Option(names = "--yes", description = "Do it without asking.")
    private boolean yes;

    @Option(
            names = "--record",
            paramLabel = "ID",
            description = "Where it cannot be told which change is this card's: the one with this id is.")
    private String record;

    @Option(
            names = "--forget",
            description = "Put a record away whose card is gone; its id or file is then named in place of a card.")
    private boolean forget;

    @Spec
    private CommandSpec spec;

    /** Which of the two ways, where one was named. */
    static final class Way {

        @Option(names = "--finish", description = "Write what is left of the change.")
        private boolean finish;

        @Option(names = "--undo", description = "Write the old content back.")
        private boolean undo;
    }

    /** The answer as a JSON document; {@code waiting} is null where no change waits. */
    record RecoverJson(
            String card,
            WaitingJson waiting,
            String done,
            @JsonInclude(JsonInclude.Include.NON_NULL) ChangeJson.MadeJson change,
            List<RecordedChange> elsewhere) {

        /** The change that waited; {@code began} in ISO 8601. */
        record WaitingJson(String title, String began, String state, boolean fits, String undoRecord) {

            static WaitingJson of(RecoveryView view) {
                return new WaitingJson(
                        view.title(), view.began().toString(), view.state(), view.fits(), view.undoRecord());
            }
        }
    }

    public RecoverCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), card);
        RecoverJob job = new RecoverJob(fixedDisk ? workplace.withFixedDisks() : workplace);
        if (forget) {
            return answer.of(() -> forget(answer, job));
        }
        return answer.of(() -> {
            try (OpenRecovery open = job.begin(card.request(), Optional.ofNullable(record))) {
                return run(answer, open);
            } catch (IOException e) {
                throw CardException.unreadable(
                        "the card could not be closed (" + e.getMessage() + ")",
                        "Take the card out and put it back in.",
                        e,
                        NextStep.Plain.SHOW_CARD);
            }
        });
    }

    private int run(Answer answer, OpenRecovery open) throws CardException {
        Screen screen = answer.sideScreen();
        Optional<RecoveryView> waiting = open.view();
        if (waiting.isEmpty()) {
            screen.line("No change waits for recovery on this card.");
            open.elsewhere().forEach(other -> tell(screen, other));
            open.incomplete()
                    .forEach(file -> screen.line("The undo record " + file
                            + " is not whole, so nothing can be told or undone with it: it was cut off before its change began, "
                            + "or damaged since. Move it out of the way if it is of no use."));
            return finish(answer, new RecoverJson(card.name(), null, "nothing", null, open.elsewhere()), ExitCode.DONE);
        }
        RecoveryView view = waiting.get();
        boolean finish = way.finish || !way.undo && view.finishSuggested();
        screen.line("Interrupted: \"" + view.title() + "\", begun " + view.began() + "; " + view.state() + ".");
        screen.line("Undo record: " + view.undoRecord());
        String doing = finish ? "Finish it" : "Undo it";
        if (view.fits() && !yes && !question.ask(doing + "?")) {
            screen.line("Nothing was written.");
            return ExitCode.REFUSED;
        }
        Made done = finish ? open.finish() : open.undo();
        new MadeWords(finish ? "the change is finished" : "the change is undone").print(screen, done);
        return finish(
                answer,
                new RecoverJson(
                        card.name(),
                        RecoverJson.WaitingJson.of(view),
                        finish ? "finished" : "undone",
                        ChangeJson.MadeJson.of(done),
                        List.of()),
                ExitCode.DONE);
    }

    private static void tell(Screen screen, RecordedChange other) {
        screen.line("Another card's change waits: \"" + other.title() + "\", begun " + other.began() + " at "
                + other.card() + " (id " + other.id() + "). Nothing shows that it was made to this card.");
    }

    private int forget(Answer answer, RecoverJob job) throws CardException {
        Screen screen = answer.sideScreen();
        if (!yes
                && !question.ask(
                        "Put the record " + card.name() + " away, so that its card cannot be recovered with it?")) {
            screen.line("Nothing was done.");
            return ExitCode.REFUSED;
        }
        RecordedChange forgotten = job.forget(card.name());
        screen.line("Put away: \"" + forgotten.title() + "\", begun " + forgotten.began() + " at " + forgotten.card()
                + ". It is kept as " + forgotten.undoRecord() + ".");
        return finish(answer, new RecoverJson(forgotten.card(), null, "forgotten", null, List.of()), ExitCode.DONE);
    }

    private int finish(Answer answer, RecoverJson document, int code) {
        if (card.json()) {
            answer.json(document);
        }
        return code;
    }
}
