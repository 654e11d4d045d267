package bootmend.cli.change;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.batch.CardNames;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.CardsAndSettings;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.option.InFileOption;
import bootmend.cli.run.CardChanges;
import bootmend.cli.run.Question;
import bootmend.edit.LineName;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code bootmend set}: single settings and single lines of a card's config file. */
@Command(
        name = "set",
        header = "One setting, or one line, of a card's config file.",
        mixinStandardHelpOptions = true,
        description =
                "Gives settings their values: where a line gives the setting its value for the board, that value alone "
                        + "changes; else a line is added in the board's section, or for every board. Shows the change "
                        + "and what a check finds in it first and asks; it can be undone with `bootmend undo`. Higher "
                        + "clocks and voltages heat a board and can damage it: its maker's limits come first.",
        footer = {
            "",
            "Examples:",
            "  bootmend set lab-07.img arm_freq=1500 --board pi4",
            "  bootmend set lab-07.img dtparam=audio=off --section all",
            "  bootmend set lab-07.img --comment-out 12",
            "  bootmend set --yes --report set.csv lab-images/ enable_uart=1"
        })
public final class SetCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardsAndSettings argument;

    @Mixin
    private BatchOptions batch;

    @Mixin
    private ChangeOptions options;

    @Mixin
    private InFileOption result;

    @Option(
            names = "--section",
            paramLabel = "S",
            description = "Set it under this section, such as all, pi4 or gpio4=1, whatever stands elsewhere.")
    private String section;

    @Option(
            names = "--board",
            paramLabel = "B",
            description = "The board the card is for, such as pi4; by default every board that it can be meant for.")
    private String board;

    @Option(
            names = "--comment-out",
            paramLabel = "LINE",
            description =
                    "Comment this line out: its number, FILE:NUMBER, or what it says. May be given several times.")
    private List<String> commentOut = new ArrayList<>();

    @Option(
            names = "--uncomment",
            paramLabel = "LINE",
            description = "Make this commented-out line live. May be given several times.")
    private List<String> uncomment = new ArrayList<>();

    @Option(
            names = "--despite-blockers",
            description = "Set it although a check finds a blocker in it. That may harm the board or permanently void "
                    + "its warranty.")
    private boolean despiteBlockers;

    @Spec
    private CommandSpec spec;

    public SetCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() throws CardException, IOException {
        refuseNumbersOnManyCards();
        ChangeOrder order = options.order(new ChangeRequest.Edit(
                argument.settings(), Optional.ofNullable(section), Optional.ofNullable(board), commentOut, uncomment));
        return new CardChanges(spec.commandLine(), argument, options, batch, question, result.inFile())
                .run(
                        options.on(workplace),
                        despiteBlockers ? order.accepting(Allow.BLOCKERS) : order,
                        "The card is so already; nothing to do.");
    }

    /** On another card the same number may be another line. */
    private void refuseNumbersOnManyCards() throws CardException {
        List<String> numbers = Stream.concat(commentOut.stream(), uncomment.stream())
                .filter(line -> new LineName(line).isNumber())
                .toList();
        if (!numbers.isEmpty() && argument.cards(new CardNames(false)).size() > 1) {
            throw new ParameterException(
                    spec.commandLine(),
                    "line " + numbers.get(0) + " may be another line on another card; name the line by what it says, "
                            + "such as --comment-out arm_freq=2000");
        }
    }
}
