package bootmend.cli;

import bootmend.job.UndoJob;
import bootmend.job.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code bootmend undo}: the last change to a card taken back. */
@Command(
        name = "undo",
        mixinStandardHelpOptions = true,
        description = "Takes the last change to this card back, as long as it was made on this computer. Shows the change "
            + "first and asks.",
        footer = {"", "Example:", "  bootmend undo lab-07.img"})
final class UndoCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardArgument card;

    @Mixin
    private ChangeOptions options;

    @Spec
    private CommandSpec spec;

    UndoCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() {
        UndoJob job = new UndoJob(workplace);
        ChangeRun run = new ChangeRun(new Answer(spec.commandLine(), card), card, options, question);
        return run.run(
                forChanging -> forChanging
                        ? job.begin(card.request(), options.inPlace())
                        : job.preview(card.request(), options.inPlace()),
                "The card already is as it was before that change; nothing to do.");
    }
}
