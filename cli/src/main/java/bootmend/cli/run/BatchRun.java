package bootmend.cli.run;

import bootmend.CardException;
import bootmend.batch.BatchJournal;
import bootmend.batch.CardBatch;
import bootmend.batch.CardResult;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.report.JsonReport;
import bootmend.cli.report.ReportFormat;
import bootmend.cli.report.WrittenReport;
import bootmend.cli.text.BatchBar;
import bootmend.cli.text.BatchTable;
import bootmend.cli.text.ErrorWords;
import bootmend.cli.text.Screen;
import bootmend.page.CardOutcome;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Stream;
import picocli.CommandLine;

/** Runs a command on many cards: the bar while it goes, each card's documents as it ends, the summary at the end. */
public final class BatchRun<T> {

    private final CommandLine line;
    private final Function<CardResult<T>, CardOutcome> summary;
    private final List<WrittenReport<CardResult<T>>> reports = new ArrayList<>();
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

    public BatchRun<T> to(WrittenReport<CardResult<T>> report) {
        reports.add(report);
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
        return silentOut().to(WrittenReport.answer(new JsonReport<>(line.getOut(), head, document)));
    }

    /**
     * Works on every card.
     *
     * @return the worst exit code
     * @throws CardException where the report cannot be begun; nothing was done then
     */
    public int run(List<Path> cards, BatchOptions options, CardBatch.Work<T> work) throws CardException {
        return run(cards, options, (batch, results) -> {
            batch.run(cards, work, results);
            return Optional.empty();
        });
    }

    /**
     * The same for a batch that changes cards; a batch that is cut is told of at the next start.
     *
     * @throws CardException also where the journal cannot be begun; nothing was done then
     */
    public int change(Workplace workplace, List<Path> cards, BatchOptions options, CardBatch.Work<T> work)
            throws CardException {
        return run(
                cards,
                options,
                (batch, results) -> BatchJournal.begin(
                                workplace.home(), line.getCommandName(), cards, workplace.instant())
                        .run(batch, work, results));
    }

    /** How the cards are gone through; gives what went wrong beside them. */
    @FunctionalInterface
    private interface Course<T> {
        Optional<CardException> run(CardBatch batch, Consumer<CardResult<T>> results) throws CardException;
    }

    private int run(List<Path> cards, BatchOptions options, Course<T> course) throws CardException {
        Optional<Path> file = options.report();
        CardBatch batch = new CardBatch(options.jobs());
        Optional<WrittenReport<CardOutcome>> summed = summed(file);
        PrintWriter err = line.getErr();
        BatchStop stop = BatchStop.watch(batch, err);
        BatchTotals totals = new BatchTotals();
        try {
            BatchTable table = new BatchTable(cards.size());
            ErrorWords errors = new ErrorWords(err);
            Optional<CardException> aside;
            try (BatchBar shown = bar && !alone ? bar(cards.size()) : BatchBar.none()) {
                aside = course.run(batch, result -> {
                    CardOutcome card = summary.apply(result);
                    totals.add(card);
                    table.add(card);
                    summed.ifPresent(each -> each.add(card));
                    reports.forEach(each -> each.add(result));
                    if ((!bar || alone) && result.started()) {
                        result.error().ifPresent(error -> errors.tell(card.card(), error));
                    }
                    shown.step();
                });
            }
            Stream.concat(
                            aside.stream(),
                            Stream.concat(summed.stream(), reports.stream()).flatMap(each -> each.end(totals).stream()))
                    .forEach(error -> totals.worsen(errors.tell("", error)));
            // A document on standard output says it all; words beside it are for whoever sits there.
            if (!alone && (!silentOut || bar)) {
                table.print(
                        new Screen(
                                silentOut ? err : line.getOut(),
                                line.getColorScheme().ansi()),
                        totals,
                        file.isPresent());
            }
            if (line.getOut().checkError()) {
                totals.worsen(ExitCode.UNREADABLE);
            }
            return totals.exitCode();
        } finally {
            line.getOut().flush();
            err.flush();
            stop.end(totals.exitCode());
        }
    }

    private Optional<WrittenReport<CardOutcome>> summed(Optional<Path> file) throws CardException {
        return file.isEmpty()
                ? Optional.empty()
                : Optional.of(ReportFormat.of(file.get()).orElseThrow().open(file.get(), line.getCommandName()));
    }

    private BatchBar bar(int cards) {
        return BatchBar.onTerminal(line.getCommandName(), cards, text -> {
            line.getErr().print(text);
            line.getErr().flush();
        });
    }
}
