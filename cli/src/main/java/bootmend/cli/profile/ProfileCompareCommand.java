package bootmend.cli.profile;

import bootmend.cli.option.JsonOption;
import bootmend.cli.run.Answer;
import bootmend.cli.text.ProfilePage;
import bootmend.record.ProfileJob;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend profile compare}. */
@Command(
        name = "compare",
        header = "How a profile differs from another, or from a card.",
        mixinStandardHelpOptions = true,
        description = "Shows the settings in which a profile and another profile, or a card, differ.",
        footer = {
            "",
            "Examples:",
            "  bootmend profile compare cart-3 cart-4",
            "  bootmend profile compare cart-3 lab-07.img"
        })
final class ProfileCompareCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(index = "0", paramLabel = "NAME", description = "A profile's name.")
    private String name;

    @Parameters(
            index = "1",
            paramLabel = "NAME|CARD",
            description = "Another profile's name, or a card: where a file or device of that name is there, the card.")
    private String other;

    @Mixin
    private JsonOption json;

    @Spec
    private CommandSpec spec;

    ProfileCompareCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        ProfileJob job = new ProfileJob(workplace);
        Path card = Path.of(other);
        return new Answer(spec.commandLine(), json.json())
                .of(
                        () -> Files.exists(card) ? job.compare(name, CardRequest.of(card)) : job.compare(name, other),
                        (screen, differences) -> new ProfilePage(screen).compare(name, other, differences));
    }
}
