package bootmend.cli.trial;

import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.page.Amount;
import bootmend.record.TrialEditJob;
import bootmend.workplace.Workplace;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend trial restore}: deleted trials put back. */
@Command(
        name = "restore",
        header = "Deleted trials put back.",
        mixinStandardHelpOptions = true,
        description = "Puts back trials that `bootmend trial delete` put aside. The ids are those that "
                + "`bootmend trial list --deleted` shows.",
        footer = {"", "Example:", "  bootmend trial restore 9f27a1c4"})
final class TrialRestoreCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(arity = "1..*", paramLabel = "ID", description = "The trials' ids.")
    private List<String> ids;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    /** The answer as a JSON document. */
    record RestoredJson(List<String> restored) {}

    TrialRestoreCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            new TrialEditJob(workplace).restore(ids);
            if (json) {
                answer.json(new RestoredJson(ids));
            } else {
                answer.screen().line("Put back: " + Amount.count(ids.size(), "trial") + ".");
            }
            return ExitCode.DONE;
        });
    }
}
