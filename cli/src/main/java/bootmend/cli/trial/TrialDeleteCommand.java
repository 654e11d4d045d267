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

/** {@code bootmend trial delete}: trials put aside. */
@Command(
        name = "delete",
        header = "Trials put aside, so that they count no more.",
        mixinStandardHelpOptions = true,
        description = "Deletes trials: their files go into the folder `deleted` beside the others, and "
                + "`bootmend trial restore` puts them back. The ids are those that `bootmend trial list` shows.",
        footer = {"", "Example:", "  bootmend trial delete 9f27a1c4"})
final class TrialDeleteCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(arity = "1..*", paramLabel = "ID", description = "The trials' ids.")
    private List<String> ids;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    /** The answer as a JSON document. */
    record DeletedJson(List<String> deleted) {}

    TrialDeleteCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            new TrialEditJob(workplace).delete(ids);
            if (json) {
                answer.json(new DeletedJson(ids));
            } else {
                answer.screen()
                        .line("Deleted: " + Amount.count(ids.size(), "trial") + ". To undo it: bootmend trial restore "
                                + String.join(" ", ids));
            }
            return ExitCode.DONE;
        });
    }
}
