package bootmend.cli;

import bootmend.CardException;
import bootmend.check.Purpose;
import bootmend.job.CardRequest;
import bootmend.job.CheckJob;
import bootmend.job.CheckRequest;
import bootmend.job.Workplace;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend check}: whether cards are ready for what comes next. */
@Command(
        name = "check",
        header = "Whether cards are ready to ship, for a firmware update or for a stability run.",
        mixinStandardHelpOptions = true,
        description = "Checks cards before they ship, before a firmware update or before a stability run; writes nothing "
            + "to them. A card with a blocker is not ready, and the exit code is 1; of many cards the worst code counts. "
            + "Without a board, a card is checked for every board that it can boot. The board maker's limits and local rules "
            + "come first.",
        footer = {"", "Example:", "  bootmend check --for ship --board pi4 --html slip.html lab-07.img"})
final class CheckCommand implements Callable<Integer> {

    private static final String STANDARD_OUTPUT = "-";

    private final Workplace workplace;

    @Parameters(arity = "1..*", paramLabel = "CARD", description = "The cards: image files or block devices.")
    private List<Path> cards;

    @Option(names = "--for", required = true, paramLabel = "PURPOSE",
            description = "What the cards are for: ship, firmware-update or stability-run.",
            converter = PurposeConverter.class)
    private Purpose purpose;

    @Option(names = "--partition", paramLabel = "N",
            description = "Take partition N, counted from 1, instead of finding the boot partition.")
    private Integer partition;

    @Mixin
    private BoardOptions board;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Option(names = "--csv", paramLabel = "FILE",
            description = "Write a table, one row a finding; - for standard output.")
    private String csv;

    @Option(names = "--html", paramLabel = "FILE",
            description = "Write a page to print and pack with the cards.")
    private Path html;

    @Spec
    private CommandSpec spec;

    CheckCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() throws IOException {
        boolean csvOut = STANDARD_OUTPUT.equals(csv);
        if (json && csvOut) {
            throw new ParameterException(spec.commandLine(),
                    "--json and --csv - both want standard output; name a file for one of them.");
        }
        Optional<Path> csvFile = Optional.ofNullable(csv).filter(name -> !csvOut).map(Path::of);
        refuseToOverwrite(csvFile);
        refuseToOverwrite(Optional.ofNullable(html));
        List<CheckedCard> checked = new ArrayList<>();
        for (Path card : cards) {
            checked.add(check(card));
            if (!json && !csvOut) {
                print(checked.get(checked.size() - 1), checked.size() > 1);
            } else {
                tellError(checked.get(checked.size() - 1));
            }
        }
        int code = checked.stream().mapToInt(CheckedCard::exitCode).max().orElse(ExitCode.DONE);
        if (json) {
            spec.commandLine().getOut().println(JsonText.of(CheckJson.of(purpose, checked, code)));
        }
        if (csvOut) {
            CheckCsv.write(spec.commandLine().getOut(), purpose, checked);
        }
        spec.commandLine().getOut().flush();
        if (csvFile.isPresent()) {
            StringWriter table = new StringWriter();
            CheckCsv.write(table, purpose, checked);
            write(csvFile.get(), table.toString());
        }
        if (html != null) {
            write(html, new CheckHtml(ZoneId.systemDefault()).page(purpose, checked));
        }
        return code;
    }

    private CheckedCard check(Path card) {
        CardRequest request = new CardRequest(card,
                partition == null ? OptionalInt.empty() : OptionalInt.of(partition));
        try {
            return CheckedCard.of(new CheckJob(workplace).run(
                    new CheckRequest(request, purpose, board.request())), card.toString());
        } catch (CardException e) {
            return CheckedCard.failed(card.toString(), e);
        } catch (RuntimeException e) {
            // One card that nobody foresaw must not keep the others from being checked.
            return CheckedCard.failed(card.toString(), CardException.unreadable(
                    "something unforeseen happened (" + e + ")", "Please report it with the command you gave.", e));
        }
    }

    private void print(CheckedCard card, boolean notFirst) {
        Screen screen = new Screen(spec.commandLine().getOut(), spec.commandLine().getColorScheme().ansi());
        if (notFirst) {
            screen.blank();
        }
        card.view().ifPresent(new CheckPage(screen)::print);
        tellError(card);
    }

    private void tellError(CheckedCard card) {
        card.error().ifPresent(error -> new ErrorWords(spec.commandLine().getErr()).tell(card.name(), error));
    }

    private static void refuseToOverwrite(Optional<Path> file) throws CardException {
        if (file.isPresent() && Files.exists(file.get(), LinkOption.NOFOLLOW_LINKS)) {
            throw there(file.get());
        }
    }

    private static void write(Path file, String text) throws CardException {
        try {
            Files.writeString(file, text, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW,
                    StandardOpenOption.WRITE);
        } catch (FileAlreadyExistsException e) {
            throw there(file);
        } catch (IOException e) {
            throw CardException.refused(file + " could not be written (" + e.getMessage() + ")",
                    "Name a file in a folder that is there and that you may write to.", e);
        }
    }

    private static CardException there(Path file) {
        return CardException.refused(file + " is there already and was left alone",
                "Name another file, or delete that one.");
    }
}
