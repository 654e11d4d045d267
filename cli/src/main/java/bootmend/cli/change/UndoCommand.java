package bootmend.cli.change;

import bootmend.CardException;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.run.CardChanges;
import bootmend.cli.run.Question;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend undo}: the last change to a card undone. */
@Command(
        name = "undo",
        header = "A change to a card undone.",
        mixinStandardHelpOptions = true,
        description =
                "Undoes the last change to each card, or with --to every change after a chosen one, as long as they "
                        + "were made on this computer. Shows the change first and asks.",
        footer = {
            "",
            "Examples:",
            "  bootmend undo lab-07.img",
            "  bootmend undo --to 2 lab-07.img",
            "  bootmend undo --yes lab-images/"
        })
public final class UndoCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardsArgument argument;

    @Mixin
    private BatchOptions batch;

    @Mixin
    private ChangeOptions options;

    @Option(
            names = "--to",
            paramLabel = "N",
            description = "Go back to how the card was after change N of `bootmend history`; 0 is before the first.")
    private Integer to;

    @Spec
    private CommandSpec spec;

    public UndoCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() throws CardException, IOException {
        ChangeRequest.Undo undo = to == null ? ChangeRequest.Undo.LAST : ChangeRequest.Undo.to(to);
        return new CardChanges(spec.commandLine(), argument, options, batch, question)
                .run(
                        options.on(workplace),
                        options.order(undo),
                        "The card already is as it was before that change; nothing to do.");
    }
}
