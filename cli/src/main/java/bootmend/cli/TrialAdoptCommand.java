package bootmend.cli;

import bootmend.job.StageJob;
import bootmend.job.Workplace;
import picocli.CommandLine.Command;

/** {@code bootmend trial adopt}: a staged trial that held becomes the config file. */
@Command(
        name = "adopt",
        header = "Staged settings that held, kept in the config file.",
        mixinStandardHelpOptions = true,
        description = "Makes the staged trial the config file, once it held: tryboot.txt's text goes into config.txt, and "
            + "tryboot.txt is removed. It can be taken back with `bootmend undo`.",
        footer = {"", "Example:", "  bootmend trial adopt lab-07.img"})
final class TrialAdoptCommand extends CardChangeCommand {

    TrialAdoptCommand(Workplace workplace, Question question) {
        super(workplace, question);
    }

    @Override
    public Integer call() {
        return change(
                forChanging -> new StageJob(workplace()).adopt(card().request(), forChanging, options().inPlace()),
                "The staged trial is the config file already; nothing to do.");
    }
}
