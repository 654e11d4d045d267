package bootmend.cli.trial;

import bootmend.cli.run.CardChangeCommand;
import bootmend.cli.run.Question;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.Workplace;
import picocli.CommandLine.Command;

/** {@code bootmend trial adopt}: a staged trial that held becomes the config file. */
@Command(
        name = "adopt",
        header = "Staged settings that held, kept in the config file.",
        mixinStandardHelpOptions = true,
        description = "Keeps the staged settings, once they held: tryboot.txt's text goes into config.txt, and "
                + "tryboot.txt is removed. It can be taken back with `bootmend undo`.",
        footer = {"", "Example:", "  bootmend trial adopt lab-07.img"})
final class TrialAdoptCommand extends CardChangeCommand {

    TrialAdoptCommand(Workplace workplace, Question question) {
        super(workplace, question);
    }

    @Override
    public Integer call() {
        return change(options().order(new ChangeRequest.Adopt()), "The staged settings are the config file's already.");
    }
}
