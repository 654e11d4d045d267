package bootmend.cli.run;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.batch.CardResult;
import bootmend.cli.json.ChangeJson;
import bootmend.cli.json.ErrorJson;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.CardArgument;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.outcome.ExitCode;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeOutcome;
import bootmend.page.Amount;
import bootmend.page.CardOutcome;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;

/** A change to the cards that were named: shown and asked about on one card, made on each of several after one yes. */
public final class CardChanges {

    private final CommandLine line;
    private final CardsArgument argument;
    private final ChangeOptions options;
    private final BatchOptions batch;
    private final Question question;

    public CardChanges(
            CommandLine line, CardsArgument argument, ChangeOptions options, BatchOptions batch, Question question) {
        this.line = line;
        this.argument = argument;
        this.options = options;
        this.batch = batch;
        this.question = question;
    }

    /** @param nothing what to say where there is nothing to change */
    public int run(Workplace workplace, ChangeOrder order, String nothing) throws CardException, IOException {
        List<Path> cards = argument.cards(new CardNames(false));
        if (cards.size() > 1 || batch.report().isPresent()) {
            return many(cards, workplace, order);
        }
        CardArgument card = argument.only(cards.get(0));
        return new ChangeRun(new Answer(line, card), card, options, question, nothing).run(workplace, order);
    }

    private int many(List<Path> cards, Workplace workplace, ChangeOrder order) throws CardException, IOException {
        ChangeOperation operation = new ChangeOperation(workplace);
        if (!options.dryRun()
                && !options.yes()
                && !question.ask("Make this change on " + Amount.count(cards.size(), "card") + "?")) {
            line.getErr().println("Nothing was written.");
            return ExitCode.REFUSED;
        }
        BatchRun<ChangeOutcome> run = new BatchRun<>(line, question.canAsk(), CardOutcome::ofChange);
        if (argument.json()) {
            run.json(Map.of(), CardChanges::document);
        }
        return options.dryRun()
                ? run.run(
                        cards,
                        batch,
                        card -> operation.workOut(argument.request(card), order).leave())
                : run.change(
                        workplace,
                        cards,
                        batch,
                        card -> operation
                                .make(argument.request(card), order, ChangeOperation.Approval.GIVEN)
                                .orThrow());
    }

    private static Object document(CardResult<ChangeOutcome> result) {
        return result.view()
                .<Object>map(ChangeJson::of)
                .orElseGet(() ->
                        ErrorJson.of(result.card().toString(), result.error().orElseThrow()));
    }
}
