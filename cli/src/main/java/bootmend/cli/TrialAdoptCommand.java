package bootmend.cli;

import bootmend.job.StageJob;
import bootmend.job.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code bootmend trial adopt}: a staged trial that held becomes the config file. */
@Command(
        name = "adopt",
        mixinStandardHelpOptions = true,
        description = "Makes the staged trial the config file, once it held: tryboot.txt's text goes into config.txt, and "
            + "tryboot.txt is removed. It can be taken back with `bootmend undo`.",
        footer = {"", "Example:", "  bootmend trial adopt lab-07.img"})
final class TrialAdoptCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardArgument card;

    @Mixin
    private ChangeOptions options;

    @Spec
    private CommandSpec spec;

    TrialAdoptCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() {
        return new ChangeRun(new Answer(spec.commandLine(), card), card, options, question).run(
                forChanging -> new StageJob(options.on(workplace)).adopt(card.request(), forChanging, options.inPlace()),
                "The staged trial is the config file already; nothing to do.");
    }
}
