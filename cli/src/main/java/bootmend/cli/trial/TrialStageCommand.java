package bootmend.cli.trial;

import bootmend.NextStep.Allow;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.CardChangeCommand;
import bootmend.cli.run.Question;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.TryOnceStart;
import bootmend.workplace.Workplace;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code bootmend trial stage}: settings that a board tries once. */
@Command(
        name = "stage",
        header = "Settings put beside the config file, which the board tries once.",
        mixinStandardHelpOptions = true,
        description = {
            "Writes tryboot.txt, the config file's text with the settings to try, and leaves config.txt as it is. The "
                    + "board tries it once when it is restarted with its try-once flag; any later start reads config.txt "
                    + "again, by itself. Every board knows that flag; pi4 revisions 1.0 and 1.1 only "
                    + "while their boot memory is not write protected.",
            "",
            "Higher clocks and voltages heat a board and can damage it. Its maker's limits and your local rules come first."
        },
        footer = {
            "",
            "Example:",
            "  bootmend trial stage lab-07.img --board pi4 \\",
            "      --set arm_freq=1850 --set over_voltage=3"
        })
final class TrialStageCommand extends CardChangeCommand {

    @Option(
            names = "--board",
            required = true,
            paramLabel = "B",
            description = "The board the card is for, such as pi4.")
    private String board;

    @Option(
            names = "--set",
            required = true,
            paramLabel = "KEY=NUMBER",
            description = "A setting to try. May be given several times; what the card sets besides stays.")
    private List<String> settings = new ArrayList<>();

    @Option(
            names = "--despite-blockers",
            description = "Stage settings although a check finds a blocker in them. That may harm the board or "
                    + "permanently void its warranty.")
    private boolean despiteBlockers;

    TrialStageCommand(Workplace workplace, Question question) {
        super(workplace, question);
    }

    @Override
    public Integer call() {
        ChangeOrder order = options().order(new ChangeRequest.Stage(board, settings));
        int code = change(
                despiteBlockers ? order.accepting(Allow.BLOCKERS) : order,
                "These settings are staged already; nothing to do.");
        if (code == ExitCode.DONE && !options().dryRun()) {
            answer().sideScreen().line("To try them once, on the board: " + TryOnceStart.command());
            answer().sideScreen().line("If they held: bootmend trial adopt " + card().name());
        }
        return code;
    }
}
