package bootmend.cli;

import bootmend.CardException;
import bootmend.job.ShowJob;
import bootmend.job.ShowView;
import bootmend.job.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code bootmend show}: what is on a card. */
@Command(
        name = "show",
        header = "What is on a card, and what a board would run with it.",
        mixinStandardHelpOptions = true,
        description = "Shows the card, its boot partition, its tuning lines, and what they come to on a board; without "
            + "one, on each board that the card can boot. Writes nothing. What is not said about the board is unknown, "
            + "and what hangs on it is shown as `depends`.",
        footer = {"", "Examples:", "  bootmend show lab-07.img", "  bootmend show --board pi4 lab-07.img",
            "  bootmend show --revision c03111 --pin 4=1 lab-07.img"})
final class ShowCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Mixin
    private CardArgument card;

    @Mixin
    private BoardOptions board;

    @Spec
    private CommandSpec spec;

    ShowCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), card);
        return answer.of(() -> {
            ShowView view = new ShowJob(workplace).run(card.request(), board.request());
            if (card.json()) {
                answer.json(ShowJson.of(view));
            } else {
                new CardPage(answer.screen()).print(view);
            }
            if (view.card().configProblem().isPresent()) {
                CardException problem = view.card().configProblem().get();
                return new ErrorWords(spec.commandLine().getErr()).tell(card.name(), problem);
            }
            return ExitCode.DONE;
        });
    }
}
