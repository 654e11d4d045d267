package bootmend.cli;

import bootmend.job.ResetJob;
import bootmend.job.ResetRequest;
import bootmend.job.Workplace;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend reset}: a card's tuning lines back to stock. */
@Command(
        name = "reset",
        mixinStandardHelpOptions = true,
        description = "Comments the active tuning lines out, so that the board runs at stock. Shows the change first and "
            + "asks; it can be taken back with `bootmend undo`.",
        footer = {"", "Examples:", "  bootmend reset --dry-run lab-07.img", "  bootmend reset --yes lab-07.img"})
final class ResetCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardArgument card;

    @Mixin
    private ChangeOptions options;

    @Option(names = "--remove", description = "Take the lines out instead of commenting them out.")
    private boolean remove;

    @Option(names = "--also", paramLabel = "KEY",
            description = "Reset lines of this key too, though a reset leaves them alone by itself, such as arm_boost.")
    private Set<String> also = new HashSet<>();

    @Spec
    private CommandSpec spec;

    ResetCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() {
        ResetJob job = new ResetJob(workplace);
        ResetRequest request = new ResetRequest(remove, also, options.inPlace());
        ChangeRun run = new ChangeRun(new Answer(spec.commandLine(), card), card, options, question);
        return run.run(
                forChanging -> forChanging ? job.begin(card.request(), request) : job.preview(card.request(), request),
                "The card is at stock already; nothing to do.");
    }
}
