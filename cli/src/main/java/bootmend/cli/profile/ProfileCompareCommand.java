package bootmend.cli.profile;

import bootmend.cli.option.JsonOption;
import bootmend.record.ProfileJob;
import bootmend.record.SettingDifference;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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

    /** One difference as JSON; null stands for stock. */
    record DifferenceJson(String key, String left, String right) {

        static DifferenceJson of(SettingDifference each) {
            return new DifferenceJson(
                    each.key(), each.left().orElse(null), each.right().orElse(null));
        }
    }

    ProfileCompareCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        ProfileAnswer answer = new ProfileAnswer(spec.commandLine(), json);
        ProfileJob job = new ProfileJob(workplace);
        Path card = Path.of(other);
        ProfileAnswer.Work<List<SettingDifference>> work =
                Files.exists(card) ? () -> job.compare(name, CardRequest.of(card)) : () -> job.compare(name, other);
        if (json.json()) {
            return answer.of(() -> work.run().stream().map(DifferenceJson::of).toList(), nothing -> {});
        }
        return answer.of(work, differences -> answer.page().compare(name, other, differences));
    }
}
