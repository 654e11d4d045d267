package bootmend.cli;

import bootmend.CardException;
import bootmend.cli.card.BoardCommand;
import bootmend.cli.card.CardsCommand;
import bootmend.cli.card.CheckCommand;
import bootmend.cli.card.CompareCommand;
import bootmend.cli.card.DemoCommand;
import bootmend.cli.card.DiagnoseCommand;
import bootmend.cli.card.EarlierCommand;
import bootmend.cli.card.ExplainCommand;
import bootmend.cli.card.KeepCommand;
import bootmend.cli.card.ShowCommand;
import bootmend.cli.change.HistoryCommand;
import bootmend.cli.change.RecoverCommand;
import bootmend.cli.change.RepairCommand;
import bootmend.cli.change.ResetCommand;
import bootmend.cli.change.SetCommand;
import bootmend.cli.change.StationCommand;
import bootmend.cli.change.UndoCommand;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.profile.ProfileCommand;
import bootmend.cli.run.CutBatchNote;
import bootmend.cli.run.Question;
import bootmend.cli.text.ErrorWords;
import bootmend.cli.trial.TrialCommand;
import bootmend.workplace.Workplace;
import java.io.Console;
import java.io.PrintWriter;
import java.util.List;
import java.util.Set;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** Puts the command line together: the commands with what they need, and what becomes of errors. */
public final class CommandLines {

    /** The commands in the order that the help lists them. */
    private static final List<String> NAMES = List.of(
            "show",
            "diagnose",
            "check",
            "compare",
            "keep",
            "set",
            "reset",
            "undo",
            "repair",
            "history",
            "earlier",
            "recover",
            "explain",
            "board",
            "profile",
            "trial",
            "cards",
            "station",
            "demo",
            CommandLines.HELP);

    private static final String HELP = "help";
    /** Those that work with cards. */
    private static final Set<String> ABOUT_CARDS =
            Set.of("show", "diagnose", "check", "reset", "undo", "repair", "history", "recover", "cards", "station");

    private static final String PROGRAM = "bootmend";

    private final Workplace workplace;
    private final Question question;

    private CommandLines(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    /**
     * The command line with every command.
     *
     * @param console where to ask, or null where there is no terminal
     */
    public static CommandLine create(Workplace workplace, Console console, PrintWriter out, PrintWriter err) {
        return new CommandLines(workplace, new Question(console)).all(out, err);
    }

    /**
     * The command line that {@code arguments} need: with the one command that the first of them names, because making
     * all of them takes longer than showing a card; with every command where it names none.
     *
     * @param console where to ask, or null where there is no terminal
     */
    public static CommandLine createFor(
            String[] arguments, Workplace workplace, Console console, PrintWriter out, PrintWriter err) {
        CommandLines lines = new CommandLines(workplace, new Question(console));
        CommandLine line = arguments.length > 0 && NAMES.contains(arguments[0]) && !arguments[0].equals(HELP)
                ? lines.only(arguments[0], out, err)
                : lines.all(out, err);
        Colours.apply(line, arguments);
        return line;
    }

    private CommandLine all(PrintWriter out, PrintWriter err) {
        return line(CommandSpec.forAnnotatedObject(new BootmendCommand()), NAMES, out, err);
    }

    private CommandLine only(String name, PrintWriter out, PrintWriter err) {
        return line(CommandSpec.create().name(PROGRAM), List.of(name), out, err);
    }

    private CommandLine line(CommandSpec root, List<String> names, PrintWriter out, PrintWriter err) {
        root.addOption(Colours.option());
        CommandLine line = new CommandLine(root);
        for (String name : names) {
            line.addSubcommand(command(name));
        }
        line.setOut(out);
        line.setErr(err);
        line.setUsageHelpAutoWidth(true);
        line.setParameterExceptionHandler(new UsageErrors(NAMES));
        line.setExecutionExceptionHandler(CommandLines::tell);
        line.setExecutionStrategy(parsed -> {
            tellCutBatches(parsed, line);
            return new CommandLine.RunLast().execute(parsed);
        });
        return line;
    }

    private Object command(String name) {
        return switch (name) {
            case "show" -> new ShowCommand(workplace, question);
            case "diagnose" -> new DiagnoseCommand(workplace);
            case "check" -> new CheckCommand(workplace, question);
            case "compare" -> new CompareCommand(workplace);
            case "keep" -> new KeepCommand(workplace);
            case "set" -> new SetCommand(workplace, question);
            case "reset" -> new ResetCommand(workplace, question);
            case "undo" -> new UndoCommand(workplace, question);
            case "repair" -> new RepairCommand(workplace, question);
            case "history" -> new HistoryCommand(workplace);
            case "earlier" -> new EarlierCommand(workplace, question);
            case "recover" -> new RecoverCommand(workplace, question);
            case "explain" -> new ExplainCommand(workplace);
            case "board" -> new BoardCommand(workplace);
            case "profile" -> ProfileCommand.line(workplace, question);
            case "trial" -> TrialCommand.line(workplace, question);
            case "cards" -> new CardsCommand(workplace);
            case "station" -> new StationCommand(workplace);
            case "demo" -> new DemoCommand();
            case HELP -> new CommandLine.HelpCommand();
            default -> throw new IllegalArgumentException("no command " + name);
        };
    }

    /** Whoever works with cards is told first of a batch that was cut, once; an answer on standard output stays as it is. */
    private void tellCutBatches(CommandLine.ParseResult parsed, CommandLine line) {
        if (!parsed.hasSubcommand()
                || !ABOUT_CARDS.contains(parsed.subcommand().commandSpec().name())) {
            return;
        }
        if (!parsed.subcommand().isUsageHelpRequested() && !parsed.subcommand().isVersionHelpRequested()) {
            new CutBatchNote(
                            workplace.home(),
                            line.getErr(),
                            line.getColorScheme().ansi())
                    .tell();
        }
    }

    private static int tell(Exception error, CommandLine command, CommandLine.ParseResult parsed) {
        if (error instanceof CardException told) {
            return new ErrorWords(command.getErr()).tell("", told);
        }
        command.getErr()
                .println("bootmend: something unforeseen happened (" + error
                        + "). Nothing more was done; please report it with the command you gave.");
        return ExitCode.UNREADABLE;
    }
}
