package bootmend.cli.trial;

import bootmend.cli.json.TrialReportJson;
import bootmend.cli.option.Given;
import bootmend.cli.run.Answer;
import bootmend.cli.text.TrialReportPage;
import bootmend.record.TrialAdviseJob;
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
            "Says what to try next on a board, for how long, and why: on the way to the highest clock that holds and then the "
                    + "lowest voltage there, in as few minutes of load as may be. Each trial is chosen by how much it is expected "
                    + "to tell for its minutes; a run of 45 minutes comes only for what is to be kept. It stops when nothing is "
                    + "left to gain.",
            "",
            "It never goes beyond the published range or needs force_turbo, and the estimated peak with its uncertainty "
                    + "stays below 80 degC. A hold counts only when it ran under full load and the throttle mask was read and "
                    + "is 0; for 45 minutes or more it is known-good. Heat is estimated from this board's own trials with the "
                    + "same cooling."
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
        return new Answer(spec.commandLine(), json)
                .of(
                        () -> new TrialAdviseJob(workplace).run(label, Given.number(ambient)),
                        TrialReportJson::of,
                        (screen, report) -> new TrialReportPage(screen).print(report));
    }
}
