package bootmend.cli.profile;

import bootmend.cli.option.JsonOption;
import bootmend.record.ProfileJob;
import bootmend.workplace.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend profile show}. */
@Command(
        name = "show",
        header = "A profile with its evidence.",
        mixinStandardHelpOptions = true,
        description = "Shows a profile with its evidence.",
        footer = {"", "Example:", "  bootmend profile show cart-3"})
final class ProfileShowCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(paramLabel = "NAME", description = "The profile's name.")
    private String name;

    @Mixin
    private JsonOption json;

    @Spec
    private CommandSpec spec;

    ProfileShowCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        ProfileAnswer answer = new ProfileAnswer(spec.commandLine(), json);
        return answer.of(() -> new ProfileJob(workplace).show(name), answer.page()::print);
    }
}
