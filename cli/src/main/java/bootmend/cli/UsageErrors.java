package bootmend.cli;

import bootmend.Sentence;
import bootmend.cli.outcome.ExitCode;
import bootmend.config.VisibleText;
import bootmend.request.NearWords;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Tells what is wrong with a command line, which word was most likely meant, and where help is: no more than that. */
final class UsageErrors implements IParameterExceptionHandler {

    /** Words that people try first, and the commands that do it. */
    private static final Map<String, List<String>> MEANT = Map.of(
            "fix", List.of("repair", "diagnose"),
            "repair", List.of("repair"),
            "restore", List.of("undo", "reset"),
            "revert", List.of("undo"),
            "stock", List.of("reset"),
            "clean", List.of("reset"),
            "list", List.of("cards"),
            "info", List.of("show"),
            "why", List.of("diagnose"),
            "verify", List.of("check"));

    private final List<String> commands;

    /** @param commands every command's name, whether it was put together or not */
    UsageErrors(List<String> commands) {
        this.commands = List.copyOf(commands);
    }

    @Override
    public int handleParseException(ParameterException error, String[] arguments) {
        CommandLine line = error.getCommandLine();
        CommandSpec spec = line.getCommandSpec();
        PrintWriter err = line.getErr();
        Ansi ansi = line.getColorScheme().ansi();
        String name = spec.qualifiedName();
        String message = name + ": " + VisibleText.of(sentence(error, spec));
        err.println(ansi.enabled() ? Ansi.Style.on(Ansi.Style.bold) + message + Ansi.Style.reset.on() : message);
        List<String> near = near(error, spec);
        if (!near.isEmpty()) {
            err.println("Did you mean " + String.join(" or ", near) + "?");
        }
        err.println("See `" + name + " --help`.");
        return ExitCode.USAGE;
    }

    private static String sentence(ParameterException error, CommandSpec spec) {
        if (!(error instanceof UnmatchedArgumentException unmatched)
                || unmatched.getUnmatched().isEmpty()) {
            return Sentence.of(error.getMessage());
        }
        String word = unmatched.getUnmatched().get(0);
        if (word.startsWith("-")) {
            return "there is no option " + word + ".";
        }
        return spec.subcommands().isEmpty()
                ? "\"" + word + "\" is one word too many."
                : "there is no command \"" + word + "\".";
    }

    private List<String> near(ParameterException error, CommandSpec spec) {
        if (!(error instanceof UnmatchedArgumentException unmatched)
                || unmatched.getUnmatched().isEmpty()) {
            return List.of();
        }
        String word = unmatched.getUnmatched().get(0).split("=", 2)[0];
        if (word.startsWith("-")) {
            return some(new NearWords(spec.options().stream()
                            .filter(option -> !option.hidden())
                            .map(OptionSpec::longestName)
                            .toList())
                    .to(word));
        }
        List<String> known = spec.subcommands().isEmpty() ? List.of() : subcommands(spec);
        List<String> meant = MEANT.getOrDefault(word, List.of()).stream()
                .filter(known::contains)
                .toList();
        return some(Stream.concat(meant.stream(), new NearWords(known).to(word).stream())
                .distinct()
                .toList());
    }

    private List<String> subcommands(CommandSpec spec) {
        return spec.parent() == null
                ? commands
                : new ArrayList<>(spec.subcommands().keySet());
    }

    private static List<String> some(List<String> words) {
        return words.stream().limit(3).toList();
    }
}
