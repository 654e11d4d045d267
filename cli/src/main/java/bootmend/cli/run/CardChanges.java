package bootmend.cli.run;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.batch.CardResult;
import bootmend.card.LoneConfig;
import bootmend.cli.json.ChangeJson;
import bootmend.cli.json.ErrorJson;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.CardArgument;
import bootmend.cli.option.CardSelection;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.outcome.ExitCode;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeOutcome;
import bootmend.page.Amount;
import bootmend.page.CardOutcome;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** A change to the cards that were named: shown and asked about on one card, made on each of several after one yes. */
public final class CardChanges {

    private final CommandLine line;
    private final CardSelection argument;
    private final ChangeOptions options;
    private final BatchOptions batch;
    private final Question question;
    private final boolean inFile;

    public CardChanges(
            CommandLine line, CardSelection argument, ChangeOptions options, BatchOptions batch, Question question) {
        this(line, argument, options, batch, question, true);
    }

    /** @param inFile whether a config file on its own is changed as cards are, rather than given on standard output */
    public CardChanges(
            CommandLine line,
            CardSelection argument,
            ChangeOptions options,
            BatchOptions batch,
            Question question,
            boolean inFile) {
        this.inFile = inFile;
        this.line = line;
        this.argument = argument;
        this.options = options;
        this.batch = batch;
        this.question = question;
    }

    /** @param nothing what to say where there is nothing to change */
    public int run(Workplace workplace, ChangeOrder order, String nothing) throws CardException, IOException {
        List<Path> cards = argument.cards(new CardNames(false));
        boolean alone = cards.size() == 1 && batch.report().isEmpty();
        if (!inFile && anyText(cards)) {
            if (!alone) {
                throw new ParameterException(
                        line, "of several files none can go to standard output; with --in-file each is changed itself");
            }
            return new TextRun(line, argument.only(cards.get(0)), options).run(workplace, order);
        }
        if (!alone) {
            return many(cards, workplace, order);
        }
        CardArgument card = argument.only(cards.get(0));
        return new ChangeRun(new Answer(line, card), card, options, question, nothing).run(workplace, order);
    }

    private boolean anyText(List<Path> cards) throws CardException {
        for (Path card : cards) {
            if (LoneConfig.isNamed(argument.request(card))) {
                return true;
            }
        }
        return false;
    }

    private int many(List<Path> cards, Workplace workplace, ChangeOrder order) throws CardException, IOException {
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
                        card -> new ChangeOperation(workplace)
                                .workOut(argument.request(card), order)
                                .leave())
                : run.change(workplace, cards, batch, card -> change(argument.request(card), workplace, order));
    }

    private ChangeOutcome change(CardRequest card, Workplace workplace, ChangeOrder order) throws CardException {
        if (options.before().isPresent()) {
            new CopyFirst(workplace, options.before().get()).keepInFolder(card);
        }
        return new ChangeOperation(workplace)
                .make(card, order, ChangeOperation.Approval.GIVEN)
                .orThrow();
    }

    private static Object document(CardResult<ChangeOutcome> result) {
        return result.view()
                .<Object>map(ChangeJson::of)
                .orElseGet(() ->
                        ErrorJson.of(result.card().toString(), result.error().orElseThrow()));
    }
}
