package bootmend.cli.profile;

import bootmend.cli.run.Question;
import bootmend.workplace.Workplace;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code bootmend profile}: the command that only has subcommands. */
@Command(
        name = "profile",
        header = "Settings under a name, to be put on cards.",
        mixinStandardHelpOptions = true,
        description =
                "Keeps profiles: named sets of tuning settings for a board, known-good when a passing trial backs them. "
                        + "`bootmend reset CARD --to NAME` puts one on a card.",
        footer = {"", "Example:", "  bootmend profile save cart-3 lab-07.img --board pi4"})
public final class ProfileCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    /** The command with its subcommands. */
    public static CommandLine line(Workplace workplace, Question question) {
        CommandLine line = new CommandLine(new ProfileCommand());
        line.addSubcommand(new ProfileSaveCommand(workplace));
        line.addSubcommand(new ProfileListCommand(workplace));
        line.addSubcommand(new ProfileShowCommand(workplace));
        line.addSubcommand(new ProfileCompareCommand(workplace));
        line.addSubcommand(new ProfileDeleteCommand(workplace, question));
        line.addSubcommand(new ProfileExportCommand(workplace));
        line.addSubcommand(new ProfileImportCommand(workplace));
        return line;
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do, for example: bootmend profile list");
    }
}
