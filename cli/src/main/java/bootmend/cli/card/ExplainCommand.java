package bootmend.cli.card;

import bootmend.cli.json.ExplainJson;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.ExplainPage;
import bootmend.view.ExplainJob;
import bootmend.view.Explanation;
import bootmend.workplace.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend explain}: what a key, a board, a rule or a throttle report means. */
@Command(
        name = "explain",
        header = "A tuning key, a board, a rule or a throttle report explained.",
        mixinStandardHelpOptions = true,
        description = "Explains a tuning key, a board, a rule of a check, or a board's throttle report, with the "
                + "published source.",
        footer = {
            "",
            "Examples:",
            "  bootmend explain over_voltage",
            "  bootmend explain pi4",
            "  bootmend explain warranty-bit",
            "  bootmend explain 0x50005"
        })
public final class ExplainCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(
            paramLabel = "WORD",
            description = "A tuning key, a board, a rule's name, or a throttle report such as 0x50005.")
    private String word;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    public ExplainCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            Explanation explanation = new ExplainJob(workplace).run(word);
            if (json) {
                answer.json(ExplainJson.of(explanation));
            } else {
                new ExplainPage(answer.screen()).print(explanation);
            }
            return ExitCode.DONE;
        });
    }
}
