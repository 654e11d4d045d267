package bootmend.cli.trial;

import bootmend.cli.json.Given;
import bootmend.cli.json.TrialReportJson;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.TrialReportPage;
import bootmend.record.TrialAdviseJob;
import bootmend.record.TrialReport;
import bootmend.workplace.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend trial advise}: the next trial, and why. */
@Command(
        name = "advise",
        header = "What to try next on a board, and why.",
        mixinStandardHelpOptions = true,
        description = {
            "Says what to try next on a board, and why: one step more voltage after a failure, 50 MHz more clock after a "
                    + "hold, and a stop before the published range ends, force_turbo is needed, or the estimated peak passes "
                    + "80 degC.",
            "",
            "A hold counts only when it ran under full load and the throttle mask was read and is 0; for 45 minutes or "
                    + "more it is known-good. Heat is estimated from this board's own trials with the same cooling."
        },
        footer = {"", "Example:", "  bootmend trial advise --label lab-07"})
final class TrialAdviseCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Option(
            names = {"--label", "--board"},
            paramLabel = "LABEL",
            required = true,
            description = "The label that the board's trials were given.")
    private String label;

    @Option(
            names = "--ambient",
            paramLabel = "DEGC",
            description = "Temperature of the air at the next trial, in degC (default: as at the latest trial).")
    private Double ambient;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    TrialAdviseCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            TrialReport report = new TrialAdviseJob(workplace).run(label, Given.number(ambient));
            if (json) {
                answer.json(TrialReportJson.of(report));
            } else {
                new TrialReportPage(answer.screen()).print(report);
            }
            return ExitCode.DONE;
        });
    }
}
