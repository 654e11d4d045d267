package bootmend.cli.card;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.batch.CardResult;
import bootmend.cli.json.CheckJson;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.BoardOptions;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.option.PurposeConverter;
import bootmend.cli.outcome.NewFile;
import bootmend.cli.report.CheckPages;
import bootmend.cli.report.CheckRows;
import bootmend.cli.report.CsvReport;
import bootmend.cli.report.PageReport;
import bootmend.cli.report.Report;
import bootmend.cli.report.WrittenReport;
import bootmend.cli.run.BatchRun;
import bootmend.cli.run.Question;
import bootmend.cli.text.Screen;
import bootmend.finding.Purpose;
import bootmend.page.CardOutcome;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.CheckView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code bootmend check}: whether cards are ready for what comes next. */
@Command(
        name = "check",
        header = "Whether cards are ready to ship, for a firmware update or for a stability run.",
        mixinStandardHelpOptions = true,
        description =
                "Checks cards before they ship, before a firmware update or before a stability run; writes nothing "
                        + "to them. A card with a blocker is not ready, and the exit code is 1; of many cards the worst code counts. "
                        + "Without a board, a card is checked for every board that it can be meant for. The board maker's limits and local rules "
                        + "come first.",
        footer = {"", "Example:", "  bootmend check --for ship --board pi4 --html slip.html lab-07.img"})
public final class CheckCommand implements Callable<Integer> {

    private static final String STANDARD_OUTPUT = "-";

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardsArgument argument;

    @Mixin
    private BatchOptions batch;

    @Option(
            names = "--for",
            required = true,
            paramLabel = "PURPOSE",
            description = "What the cards are for: ship, firmware-update or stability-run.",
            converter = PurposeConverter.class)
    private Purpose purpose;

    @Mixin
    private BoardOptions board;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            description = "Write a table, one row a finding; - for standard output.")
    private String csv;

    @Option(names = "--html", paramLabel = "FILE", description = "Write a page to print and pack with the cards.")
    private Path html;

    @Spec
    private CommandSpec spec;

    public CheckCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() throws CardException, IOException {
        boolean csvOut = STANDARD_OUTPUT.equals(csv);
        if (argument.json() && csvOut) {
            throw new ParameterException(
                    spec.commandLine(), "--json and --csv - both want standard output; name a file for one of them.");
        }
        List<Path> cards = argument.cards(new CardNames(true));
        Optional<Path> table = Optional.ofNullable(csv).filter(name -> !csvOut).map(Path::of);
        refuseToOverwrite(table);
        refuseToOverwrite(Optional.ofNullable(html));
        PrintWriter out = spec.commandLine().getOut();
        boolean silent = argument.json() || csvOut;
        BatchRun<CheckView> run = new BatchRun<>(spec.commandLine(), question.canAsk() && silent, CardOutcome::ofCheck);
        boolean alone = cards.size() == 1 && batch.report().isEmpty();
        if (alone) {
            run.withoutSummary();
        }
        if (argument.json()) {
            run.json(Map.of("purpose", purpose.word()), CheckJson::of);
        } else if (csvOut) {
            run.silentOut().to(WrittenReport.answer(table(out)));
        } else {
            run.to(WrittenReport.answer(new CheckPages(
                    new Screen(out, spec.commandLine().getColorScheme().ansi()))));
        }
        if (table.isPresent()) {
            run.to(WrittenReport.file(table.get(), this::table));
        }
        if (html != null) {
            run.to(WrittenReport.file(html, file -> PageReport.slips(file, purpose)));
        }
        return run.run(cards, batch, this::check);
    }

    private Report<CardResult<CheckView>> table(Writer out) throws IOException {
        return new CsvReport<>(out, CheckRows.HEADER, new CheckRows(purpose)::of);
    }

    private CheckView check(Path card) throws CardException {
        return new CheckJob(workplace).run(new CheckRequest(argument.request(card), purpose, board.request()));
    }

    private static void refuseToOverwrite(Optional<Path> file) throws CardException {
        if (file.isPresent() && Files.exists(file.get(), LinkOption.NOFOLLOW_LINKS)) {
            throw NewFile.there(file.get());
        }
    }
}
