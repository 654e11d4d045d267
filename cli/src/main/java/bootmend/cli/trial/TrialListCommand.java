package bootmend.cli.trial;

import bootmend.CardException;
import bootmend.cli.json.TrialJson;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.ErrorWords;
import bootmend.cli.text.TrialPage;
import bootmend.record.TrialFilter;
import bootmend.record.TrialListJob;
import bootmend.record.TrialListing;
import bootmend.workplace.Workplace;
import java.util.ArrayList;
import java.util.List;
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
        footer = {"", "Example:", "  bootmend trial list --label lab-07 --counts known-good --newest 5"})
final class TrialListCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Option(
            names = {"--label", "--board"},
            paramLabel = "LABEL",
            description = "Only those of the board with this label.")
    private String label;

    @Option(names = "--kind", paramLabel = "BOARD", description = "Only those of this kind of board, such as pi4.")
    private String kind;

    @Option(
            names = "--outcome",
            paramLabel = "WORD",
            description = "Only those that ended so: boots, no-boot, locks-up, misbehaves, throttles or holds.")
    private String outcome;

    @Option(
            names = "--counts",
            paramLabel = "WORD",
            description = "Only those that count so: known-good, held, failed, throttled or undecided.")
    private String counts;

    @Option(
            names = "--set",
            paramLabel = "KEY=NUMBER",
            description = "Only those with this setting in force. May be given several times.")
    private List<String> settings = new ArrayList<>();

    @Option(names = "--cooling", paramLabel = "TEXT", description = "Only those whose cooling has these words in it.")
    private String cooling;

    @Option(names = "--since", paramLabel = "DAY", description = "Only those from this day on, such as 2026-11-24.")
    private String since;

    @Option(names = "--until", paramLabel = "DAY", description = "Only those up to this day.")
    private String until;

    @Option(names = "--newest", paramLabel = "N", description = "Only so many, the newest.")
    private Integer newest;

    @Option(names = "--deleted", description = "Those that were deleted and can be put back.")
    private boolean deleted;

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
            TrialListing listing =
                    deleted ? new TrialListJob(workplace).deleted(filter()) : new TrialListJob(workplace).run(filter());
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

    private TrialFilter filter() {
        return new TrialFilter(
                Optional.ofNullable(label),
                Optional.ofNullable(kind),
                Optional.ofNullable(outcome),
                Optional.ofNullable(counts),
                settings,
                Optional.ofNullable(cooling),
                Optional.ofNullable(since),
                Optional.ofNullable(until),
                Optional.ofNullable(newest));
    }
}
