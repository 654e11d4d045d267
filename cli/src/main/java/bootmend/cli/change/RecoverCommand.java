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
import bootmend.view.RecoveryView;
import bootmend.workplace.Workplace;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend recover}: a change that was cut short, finished or taken back. */
@Command(
        name = "recover",
        header = "A change that was cut short, finished or taken back.",
        mixinStandardHelpOptions = true,
        description =
                "Finishes a change to this card that was cut short, or takes it back, from the undo record on this "
                        + "computer. Without --finish or --take-back it takes the shorter way. Asks first.",
        footer = {"", "Examples:", "  bootmend recover lab-07.img", "  bootmend recover --take-back --yes lab-07.img"})
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

    @Spec
    private CommandSpec spec;

    /** Which of the two ways, where one was named. */
    static final class Way {

        @Option(names = "--finish", description = "Write what is left of the change.")
        private boolean finish;

        @Option(names = "--take-back", description = "Write the old content back.")
        private boolean takeBack;
    }

    /** The answer as a JSON document; {@code waiting} is null where no change waits. */
    record RecoverJson(
            String card,
            WaitingJson waiting,
            String done,
            @JsonInclude(JsonInclude.Include.NON_NULL) ChangeJson.MadeJson change) {

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
        return answer.of(() -> {
            try (OpenRecovery open =
                    new RecoverJob(fixedDisk ? workplace.withFixedDisks() : workplace).begin(card.request())) {
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
            return finish(answer, new RecoverJson(card.name(), null, "nothing", null), ExitCode.DONE);
        }
        RecoveryView view = waiting.get();
        boolean finish = way.finish || !way.takeBack && view.finishSuggested();
        screen.line("Cut short: \"" + view.title() + "\", begun " + view.began() + "; " + view.state() + ".");
        screen.line("Undo record: " + view.undoRecord());
        String doing = finish ? "Finish it" : "Take it back";
        if (view.fits() && !yes && !question.ask(doing + "?")) {
            screen.line("Nothing was written.");
            return ExitCode.REFUSED;
        }
        Made done = finish ? open.finish() : open.takeBack();
        new MadeWords(finish ? "the change is finished" : "the change is undone").print(screen, done);
        return finish(
                answer,
                new RecoverJson(
                        card.name(),
                        RecoverJson.WaitingJson.of(view),
                        finish ? "finished" : "taken back",
                        ChangeJson.MadeJson.of(done)),
                ExitCode.DONE);
    }

    private int finish(Answer answer, RecoverJson document, int code) {
        if (card.json()) {
            answer.json(document);
        }
        return code;
    }
}
