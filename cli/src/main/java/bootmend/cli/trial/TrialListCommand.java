package bootmend.cli.trial;

import bootmend.CardException;
import bootmend.cli.json.TrialJson;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.ErrorWords;
import bootmend.cli.text.TrialPage;
import bootmend.record.TrialListJob;
import bootmend.record.TrialListing;
import bootmend.workplace.Workplace;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend trial list}: the trials on this computer. */
@Command(
        name = "list",
        header = "The trials on this computer.",
        mixinStandardHelpOptions = true,
        description = "Lists the trials on this computer, the oldest first, and names every file that cannot be "
                + "read as a trial.",
        footer = {"", "Example:", "  bootmend trial list --label lab-07"})
final class TrialListCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Option(
            names = {"--label", "--board"},
            paramLabel = "LABEL",
            description = "Only those of the board with this label.")
    private String label;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    TrialListCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            TrialListing listing = new TrialListJob(workplace).run(Optional.ofNullable(label));
            if (json) {
                answer.json(TrialJson.ListJson.of(listing));
            } else {
                new TrialPage(answer.screen()).list(listing);
            }
            ErrorWords errors = new ErrorWords(spec.commandLine().getErr());
            int code = ExitCode.DONE;
            for (CardException problem : listing.problems()) {
                code = errors.tell("", problem);
            }
            return code;
        });
    }
}
