package bootmend.cli.run;

import bootmend.CardException;
import bootmend.batch.CardBatch;
import bootmend.batch.CardResult;
import bootmend.cli.json.CardsJson;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.report.BatchReportFile;
import bootmend.cli.report.CardSink;
import bootmend.cli.text.BatchBar;
import bootmend.cli.text.BatchTable;
import bootmend.cli.text.ErrorWords;
import bootmend.cli.text.Screen;
import bootmend.page.CardOutcome;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine;

/** Runs a command on many cards: the bar while it goes, each card's documents as it ends, the summary at the end. */
public final class BatchRun<T> {

    private final CommandLine line;
    private final Function<CardResult<T>, CardOutcome> summary;
    private final List<CardSink<T>> sinks = new ArrayList<>();
    private final boolean bar;
    private boolean silentOut;
    private boolean alone;

    /**
     * @param bar whether there is a terminal that shows how far it is
     * @param summary how a result is summed up
     */
    public BatchRun(CommandLine line, boolean bar, Function<CardResult<T>, CardOutcome> summary) {
        this.line = line;
        this.bar = bar;
        this.summary = summary;
    }

    public BatchRun<T> to(CardSink<T> sink) {
        sinks.add(sink);
        return this;
    }

    /** Leaves standard output to a document. */
    public BatchRun<T> silentOut() {
        silentOut = true;
        return this;
    }

    /** Without a table and counts at the end, as for one card. */
    public BatchRun<T> withoutSummary() {
        alone = true;
        return this;
    }

    /** Answers with one JSON document on standard output. */
    public BatchRun<T> json(Map<String, String> head, Function<CardResult<T>, Object> document) throws IOException {
        CardsJson json = new CardsJson(line.getOut(), head);
        return silentOut().to(new CardSink<>() {
            @Override
            public void add(CardResult<T> result) throws IOException {
                json.add(document.apply(result));
            }

            @Override
            public void end(BatchTotals totals) throws IOException {
                json.end(totals);
            }
        });
    }

    /**
     * Works on every card.
     *
     * @return the worst exit code
     * @throws CardException where the report cannot be begun; nothing was done then
     */
    public int run(List<Path> cards, BatchOptions options, CardBatch.Work<T> work) throws CardException {
        Optional<Path> file = options.report();
        CardBatch batch = new CardBatch(options.jobs());
        BatchReportFile report = BatchReportFile.open(file, line.getCommandName());
        PrintWriter err = line.getErr();
        BatchStop stop = BatchStop.watch(batch, err);
        BatchTotals totals = new BatchTotals();
        try {
            BatchTable table = new BatchTable(cards.size());
            ErrorWords errors = new ErrorWords(err);
            try (BatchBar shown = bar && !alone ? bar(cards.size()) : BatchBar.none()) {
                batch.run(cards, work, result -> {
                    CardOutcome card = summary.apply(result);
                    totals.add(card);
                    table.add(card);
                    report.add(card);
                    sinks.forEach(sink -> tell(errors, totals, () -> sink.add(result)));
                    if ((!bar || alone) && result.started()) {
                        result.error().ifPresent(error -> errors.tell(card.card(), error));
                    }
                    shown.step();
                });
            }
            report.end(totals).ifPresent(error -> totals.worsen(errors.tell("", error)));
            sinks.forEach(sink -> tell(errors, totals, () -> sink.end(totals)));
            // A document on standard output says it all; words beside it are for whoever sits there.
            if (!alone && (!silentOut || bar)) {
                table.print(
                        new Screen(
                                silentOut ? err : line.getOut(),
                                line.getColorScheme().ansi()),
                        totals,
                        file.isPresent());
            }
            return totals.exitCode();
        } finally {
            line.getOut().flush();
            err.flush();
            stop.end(totals.exitCode());
        }
    }

    private interface Writing {
        void run() throws IOException;
    }

    /** A document that cannot be written must not keep cards from being done. */
    private static void tell(ErrorWords errors, BatchTotals totals, Writing writing) {
        try {
            writing.run();
        } catch (IOException e) {
            totals.worsen(errors.tell(
                    "",
                    CardException.refused(
                            "an answer could not be written (" + e.getMessage() + ")",
                            "Make room and give the command again; cards that are done stay as they are.",
                            e)));
        }
    }

    private BatchBar bar(int cards) {
        return BatchBar.onTerminal(line.getCommandName(), cards, text -> {
            line.getErr().print(text);
            line.getErr().flush();
        });
    }
}
