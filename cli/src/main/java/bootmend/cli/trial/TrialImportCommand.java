package bootmend.cli.trial;

import bootmend.cli.json.Given;
import bootmend.cli.json.LogJson;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.LogPage;
import bootmend.record.TrialImportJob;
import bootmend.trial.LogSummary;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend trial import}: what a board's log comes to. */
@Command(
        name = "import",
        header = "What a board's log comes to.",
        mixinStandardHelpOptions = true,
        description = {
            "Reads a board's log and says what it comes to: time at full clock, peak, time to 80 degC, share of time below "
                    + "the set clock, and every throttle bit seen. Keeps nothing; `bootmend trial add --from LOG` does.",
            "",
            "The log is CSV with a head row: time (seconds, or like 2026-11-24T15:30:00Z), clock_mhz, volts, temperature "
                    + "(degC), mask (hexadecimal), in any order and in any case. Cells may be empty. `bootmend trial logger` "
                    + "gives a script for the board that writes such a log."
        },
        footer = {"", "Example:", "  bootmend trial import --clock 2000 log.csv"})
final class TrialImportCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(paramLabel = "LOG", description = "The log, a CSV file.")
    private Path log;

    @Option(
            names = "--clock",
            paramLabel = "MHZ",
            description = "The clock that was set, in MHz (default: the highest in the log).")
    private Double clock;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    TrialImportCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            LogSummary summary = new TrialImportJob(workplace).run(log, Given.number(clock));
            if (json) {
                answer.json(LogJson.of(summary));
            } else {
                new LogPage(answer.screen()).print(summary);
            }
            return ExitCode.DONE;
        });
    }
}
