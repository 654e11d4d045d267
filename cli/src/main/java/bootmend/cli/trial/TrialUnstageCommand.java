package bootmend.cli.trial;

import bootmend.cli.run.CardChangeCommand;
import bootmend.cli.run.Question;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.Workplace;
import picocli.CommandLine.Command;

/** {@code bootmend trial unstage}: a staged trial removed. */
@Command(
        name = "unstage",
        header = "Staged settings taken away again.",
        mixinStandardHelpOptions = true,
        description = "Removes tryboot.txt with the staged settings; config.txt stays as it is.",
        footer = {"", "Example:", "  bootmend trial unstage lab-07.img"})
final class TrialUnstageCommand extends CardChangeCommand {

    TrialUnstageCommand(Workplace workplace, Question question) {
        super(workplace, question);
    }

    @Override
    public Integer call() {
        return change(options().order(new ChangeRequest.Unstage()), "Nothing is staged.");
    }
}
