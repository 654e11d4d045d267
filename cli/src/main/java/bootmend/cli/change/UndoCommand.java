package bootmend.cli.change;

import bootmend.cli.run.CardChangeCommand;
import bootmend.cli.run.Question;
import bootmend.operation.UndoJob;
import bootmend.operation.UndoRequest;
import bootmend.workplace.Workplace;
import java.util.OptionalInt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code bootmend undo}: the last change to a card taken back. */
@Command(
        name = "undo",
        header = "A change to a card taken back.",
        mixinStandardHelpOptions = true,
        description =
                "Takes the last change to this card back, or with --to every change after a chosen one, as long as "
                        + "they were made on this computer. Shows the change first and asks.",
        footer = {"", "Examples:", "  bootmend undo lab-07.img", "  bootmend undo --to 2 lab-07.img"})
public final class UndoCommand extends CardChangeCommand {

    @Option(
            names = "--to",
            paramLabel = "N",
            description = "Go back to how the card was after change N of `bootmend history`; 0 is before the first.")
    private Integer to;

    public UndoCommand(Workplace workplace, Question question) {
        super(workplace, question);
    }

    @Override
    public Integer call() {
        UndoJob job = new UndoJob(workplace());
        UndoRequest undo = new UndoRequest(
                to == null ? OptionalInt.empty() : OptionalInt.of(to), options().inPlace());
        return change(
                forChanging -> forChanging ? job.begin(card().request(), undo) : job.preview(card().request(), undo),
                "The card already is as it was before that change; nothing to do.");
    }
}
