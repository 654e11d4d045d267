package bootmend.cli;

import bootmend.CardException;
import bootmend.job.CardView;
import bootmend.job.ShowJob;
import bootmend.job.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code bootmend show}: what is on a card. */
@Command(
        name = "show",
        mixinStandardHelpOptions = true,
        description = "Shows the card, its boot partition and its tuning lines; writes nothing.",
        footer = {"", "Example:", "  bootmend show lab-07.img"})
final class ShowCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Mixin
    private CardArgument card;

    @Spec
    private CommandSpec spec;

    ShowCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), card);
        return answer.of(() -> {
            CardView view = new ShowJob(workplace).run(card.request());
            if (card.json()) {
                answer.json(CardJson.of(view));
            } else {
                new CardPage(answer.screen()).print(view);
            }
            if (view.configProblem().isPresent()) {
                CardException problem = view.configProblem().get();
                return new ErrorWords(spec.commandLine().getErr()).tell(card.name(), problem);
            }
            return ExitCode.DONE;
        });
    }
}
