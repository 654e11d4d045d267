package bootmend.cli.profile;

import bootmend.cli.option.JsonOption;
import bootmend.record.ProfileJob;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend profile import}. */
@Command(
        name = "import",
        header = "A profile read from such a file and kept here.",
        mixinStandardHelpOptions = true,
        description = "Keeps a profile from its file, under the name in the file. Its evidence is what the file says.",
        footer = {"", "Example:", "  bootmend profile import cart-3.yaml"})
final class ProfileImportCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(paramLabel = "FILE", description = "The file.")
    private Path file;

    @Option(names = "--replace", description = "Replace a profile of that name.")
    private boolean replace;

    @Mixin
    private JsonOption json;

    @Spec
    private CommandSpec spec;

    ProfileImportCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        ProfileAnswer answer = new ProfileAnswer(spec.commandLine(), json);
        return answer.of(() -> new ProfileJob(workplace).importFrom(file, replace), answer.page()::print);
    }
}
