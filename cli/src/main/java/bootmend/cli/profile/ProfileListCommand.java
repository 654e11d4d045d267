package bootmend.cli.profile;

import bootmend.cli.option.JsonOption;
import bootmend.record.ProfileJob;
import bootmend.workplace.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code bootmend profile list}. */
@Command(
        name = "list",
        header = "The profiles on this computer.",
        mixinStandardHelpOptions = true,
        description = "Lists the profiles on this computer.",
        footer = {"", "Example:", "  bootmend profile list"})
final class ProfileListCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Mixin
    private JsonOption json;

    @Spec
    private CommandSpec spec;

    ProfileListCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        ProfileAnswer answer = new ProfileAnswer(spec.commandLine(), json);
        return answer.of(() -> new ProfileJob(workplace).list(), answer.page()::list);
    }
}
