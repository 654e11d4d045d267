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
import bootmend.operation.CardChange;
import bootmend.operation.ProposedChange;
import bootmend.page.Amount;
import bootmend.page.CardOutcome;
import bootmend.request.CardRequest;
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

    /** Works a change to a card out: on one that is held for changing, or on one that is only read. */
    @FunctionalInterface
    public interface Proposer {
        ProposedChange propose(CardRequest card, boolean forChanging) throws CardException;
    }

    /** @param nothing what to say where there is nothing to change */
    public int run(Proposer proposer, String nothing) throws CardException, IOException {
        List<Path> cards = argument.cards(new CardNames(false));
        if (cards.size() > 1 || batch.report().isPresent()) {
            return many(cards, proposer);
        }
        CardArgument card = argument.only(cards.get(0));
        return new ChangeRun(new Answer(line, card), card, options, question)
                .run(forChanging -> proposer.propose(card.request(), forChanging), nothing);
    }

    private int many(List<Path> cards, Proposer proposer) throws CardException, IOException {
        if (!options.dryRun()
                && !options.yes()
                && !question.ask("Make this change on " + Amount.count(cards.size(), "card") + "?")) {
            line.getErr().println("Nothing was written.");
            return ExitCode.REFUSED;
        }
        BatchRun<CardChange> run = new BatchRun<>(line, question.canAsk(), CardOutcome::ofChange);
        if (argument.json()) {
            run.json(Map.of(), CardChanges::document);
        }
        return run.run(
                cards,
                batch,
                card -> CardChange.of(
                        forChanging -> proposer.propose(argument.request(card), forChanging), options.dryRun()));
    }

    private static Object document(CardResult<CardChange> result) {
        return result.view()
                .<Object>map(ChangeJson::of)
                .orElseGet(() ->
                        ErrorJson.of(result.card().toString(), result.error().orElseThrow()));
    }
}
