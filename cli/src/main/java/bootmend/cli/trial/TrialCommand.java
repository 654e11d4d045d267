package bootmend.cli.trial;

import bootmend.cli.run.Question;
import bootmend.workplace.Workplace;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code bootmend trial}: the command that only has subcommands about trials. */
@Command(
        name = "trial",
        header = "Which settings were tried on each board, and what to try next.",
        mixinStandardHelpOptions = true,
        description = {
            "Keeps which settings were tried on each board, one trial of one setting at a time, with its outcome, and "
                    + "works out what to try next.",
            "",
            "Higher clocks and voltages heat a board and can damage it. Its maker's limits and your local rules come "
                    + "first; when in doubt, ask someone qualified."
        },
        footer = {"", "Example:", "  bootmend trial advise --label lab-07"})
public final class TrialCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    /** The command with its subcommands. */
    public static CommandLine line(Workplace workplace, Question question) {
        CommandLine line = new CommandLine(new TrialCommand());
        line.addSubcommand(new TrialAddCommand(workplace));
        line.addSubcommand(new TrialListCommand(workplace));
        line.addSubcommand(new TrialEditCommand(workplace));
        line.addSubcommand(new TrialDeleteCommand(workplace));
        line.addSubcommand(new TrialRestoreCommand(workplace));
        line.addSubcommand(new TrialImportCommand(workplace));
        line.addSubcommand(new TrialAdviseCommand(workplace));
        line.addSubcommand(new TrialChartCommand(workplace));
        line.addSubcommand(new TrialLoggerCommand());
        line.addSubcommand(new TrialStageCommand(workplace, question));
        line.addSubcommand(new TrialUnstageCommand(workplace, question));
        line.addSubcommand(new TrialAdoptCommand(workplace, question));
        return line;
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do, for example: bootmend trial list");
    }
}
