package bootmend.cli;

import bootmend.CardException;
import bootmend.job.Workplace;
import java.io.Console;
import java.io.PrintWriter;
import picocli.CommandLine;

/** Puts the command line together: the commands with what they need, and what becomes of errors. */
final class CommandLines {

    private CommandLines() {
    }

    /** @param console where to ask, or null where there is no terminal */
    static CommandLine create(Workplace workplace, Console console, PrintWriter out, PrintWriter err) {
        Question question = new Question(console);
        CommandLine line = new CommandLine(new BootmendCommand());
        line.addSubcommand(new ShowCommand(workplace, question));
        line.addSubcommand(new CheckCommand(workplace, question));
        line.addSubcommand(new ResetCommand(workplace, question));
        line.addSubcommand(new UndoCommand(workplace, question));
        line.addSubcommand(new RepairCommand(workplace, question));
        line.addSubcommand(new HistoryCommand(workplace));
        line.addSubcommand(new RecoverCommand(workplace, question));
        line.addSubcommand(new ExplainCommand(workplace));
        line.addSubcommand(new BoardCommand(workplace));
        line.addSubcommand(profile(workplace, question));
        line.addSubcommand(TrialCommand.line(workplace, question));
        line.addSubcommand(new CardsCommand(workplace));
        line.addSubcommand(new StationCommand(workplace));
        line.addSubcommand(new DemoCommand());
        line.setOut(out);
        line.setErr(err);
        line.setUsageHelpAutoWidth(true);
        line.setExecutionExceptionHandler(CommandLines::tell);
        return line;
    }

    private static CommandLine profile(Workplace workplace, Question question) {
        return new CommandLine(new ProfileCommand())
                .addSubcommand(new ProfileSaveCommand(workplace))
                .addSubcommand(new ProfileListCommand(workplace))
                .addSubcommand(new ProfileShowCommand(workplace))
                .addSubcommand(new ProfileCompareCommand(workplace))
                .addSubcommand(new ProfileDeleteCommand(workplace, question))
                .addSubcommand(new ProfileExportCommand(workplace))
                .addSubcommand(new ProfileImportCommand(workplace));
    }

    private static int tell(Exception error, CommandLine command, CommandLine.ParseResult parsed) {
        if (error instanceof CardException told) {
            return new ErrorWords(command.getErr()).tell("", told);
        }
        command.getErr().println("bootmend: something unforeseen happened (" + error
                + "). Nothing more was done; please report it with the command you gave.");
        return ExitCode.UNREADABLE;
    }
}
