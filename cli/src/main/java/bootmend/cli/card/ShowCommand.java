package bootmend.cli.card;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.batch.CardResult;
import bootmend.cli.json.ErrorJson;
import bootmend.cli.json.ShowJson;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.BoardOptions;
import bootmend.cli.option.CardArgument;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.run.BatchRun;
import bootmend.cli.run.Question;
import bootmend.cli.text.CardPage;
import bootmend.cli.text.ErrorWords;
import bootmend.page.CardOutcome;
import bootmend.view.ShowJob;
import bootmend.view.ShowView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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
        description =
                "Shows the card, its boot partition, its tuning lines, and what they come to on a board; without "
                        + "one, on each board that the card can be meant for. Writes nothing. What is not said about the board is unknown, "
                        + "and what hangs on it is shown as `depends`. Of several cards, or with --report, one line each is shown.",
        footer = {
            "",
            "Examples:",
            "  bootmend show lab-07.img",
            "  bootmend show --board pi4 lab-07.img",
            "  bootmend show --revision c03111 --pin 4=1 lab-07.img",
            "  bootmend show --report lab.csv lab-images/"
        })
public final class ShowCommand implements Callable<Integer> {

    private final Workplace workplace;

    private final Question question;

    @Mixin
    private CardsArgument argument;

    @Mixin
    private BatchOptions batch;

    @Mixin
    private BoardOptions board;

    @Spec
    private CommandSpec spec;

    public ShowCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() throws CardException, IOException {
        List<Path> cards = argument.cards(new CardNames(true));
        return cards.size() == 1 && batch.report().isEmpty() ? one(argument.only(cards.get(0))) : many(cards);
    }

    private int many(List<Path> cards) throws CardException, IOException {
        BatchRun<ShowView> run = new BatchRun<>(spec.commandLine(), question.canAsk(), CardOutcome::ofShow);
        if (argument.json()) {
            run.json(Map.of(), ShowCommand::document);
        }
        return run.run(cards, batch, card -> new ShowJob(workplace).run(argument.request(card), board.request()));
    }

    private static Object document(CardResult<ShowView> result) {
        return result.view()
                .<Object>map(ShowJson::of)
                .orElseGet(() ->
                        ErrorJson.of(result.card().toString(), result.error().orElseThrow()));
    }

    private int one(CardArgument card) {
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
