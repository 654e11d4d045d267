package bootmend.cli.trial;

import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.record.TrialLoggerJob;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend trial logger}: the script that logs on the board. */
@Command(
        name = "logger",
        header = "A script for the board that writes its log.",
        mixinStandardHelpOptions = true,
        description = {
            "Writes out a script in plain sh for the board. Started there while the board works, it logs clock, "
                    + "temperature and, where the kernel offers them, volts and throttle mask every few seconds; its file is what "
                    + "`bootmend trial import` and `bootmend trial add --from` read.",
            "",
            "A board under load gets hot: stay with it, and stop when it stays above 80 degC."
        },
        footer = {
            "",
            "Example:",
            "  bootmend trial logger board-log.sh",
            "and on the board:",
            "  sh board-log.sh log.csv"
        })
final class TrialLoggerCommand implements Callable<Integer> {

    @Parameters(
            arity = "0..1",
            paramLabel = "FILE",
            description = "Where to write the script (default: standard output).")
    private Path file;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    /** The answer as a JSON document: {@code file} where it was written to one, else {@code script}. */
    record LoggerJson(String file, String script) {}

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            TrialLoggerJob job = new TrialLoggerJob();
            if (file != null) {
                job.write(file);
            }
            if (json) {
                answer.json(new LoggerJson(file == null ? null : file.toString(), file == null ? job.text() : null));
            } else if (file == null) {
                spec.commandLine().getOut().print(job.text());
                spec.commandLine().getOut().flush();
            } else {
                answer.screen().line("Written: " + file + ". On the board: sh " + file.getFileName() + " log.csv");
            }
            return ExitCode.DONE;
        });
    }
}
