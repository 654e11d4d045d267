package bootmend.cli.profile;

import bootmend.cli.option.JsonOption;
import bootmend.record.ProfileJob;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend profile export}. */
@Command(
        name = "export",
        header = "A profile written to a file for another computer.",
        mixinStandardHelpOptions = true,
        description = "Copies a profile's file, to be imported on another computer.",
        footer = {"", "Example:", "  bootmend profile export cart-3 cart-3.yaml"})
final class ProfileExportCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(index = "0", paramLabel = "NAME", description = "The profile's name.")
    private String name;

    @Parameters(index = "1", paramLabel = "FILE", description = "The file to write, which must not be there yet.")
    private Path file;

    @Mixin
    private JsonOption json;

    @Spec
    private CommandSpec spec;

    ProfileExportCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        ProfileAnswer answer = new ProfileAnswer(spec.commandLine(), json);
        return answer.of(
                () -> {
                    new ProfileJob(workplace).exportTo(name, file);
                    return Map.of("file", file.toString());
                },
                done -> answer.screen().line("Written: " + file));
    }
}
