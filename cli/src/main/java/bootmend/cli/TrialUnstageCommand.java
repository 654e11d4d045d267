package bootmend.cli;

import bootmend.job.StageJob;
import bootmend.job.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code bootmend trial unstage}: a staged trial removed. */
@Command(
        name = "unstage",
        mixinStandardHelpOptions = true,
        description = "Removes tryboot.txt, the staged trial; config.txt stays as it is.",
        footer = {"", "Example:", "  bootmend trial unstage lab-07.img"})
final class TrialUnstageCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardArgument card;

    @Mixin
    private ChangeOptions options;

    @Spec
    private CommandSpec spec;

    TrialUnstageCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() {
        return new ChangeRun(new Answer(spec.commandLine(), card), card, options, question).run(
                forChanging -> new StageJob(options.on(workplace)).unstage(card.request(), forChanging),
                "No trial is staged on this card; nothing to do.");
    }
}
