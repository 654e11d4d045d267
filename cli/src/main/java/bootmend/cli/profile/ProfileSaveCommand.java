package bootmend.cli.profile;

import bootmend.cli.option.JsonOption;
import bootmend.record.ProfileJob;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend profile save}: a card's settings for a board, under a name. */
@Command(
        name = "save",
        header = "The settings of a card kept as a profile.",
        mixinStandardHelpOptions = true,
        description =
                "Saves the tuning settings that a board runs with a card. With a passing trial as evidence the profile "
                        + "is known-good, else it is unproven.",
        footer = {
            "",
            "Example:",
            "  bootmend profile save cart-3 lab-07.img --board pi4 \\",
            "      --cooling \"heat sink, no fan\""
        })
final class ProfileSaveCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(index = "0", paramLabel = "NAME", description = "The profile's name.")
    private String name;

    @Parameters(index = "1", paramLabel = "CARD", description = "The card: an image file or a block device.")
    private Path card;

    @Option(names = "--board", required = true, paramLabel = "B", description = "The board, such as pi4.")
    private String board;

    @Option(names = "--cooling", defaultValue = "", paramLabel = "WORDS", description = "What cools the board.")
    private String cooling;

    @Option(names = "--supply", defaultValue = "", paramLabel = "WORDS", description = "What feeds the board.")
    private String supply;

    @Option(names = "--notes", defaultValue = "", paramLabel = "WORDS", description = "Anything else.")
    private String notes;

    @Option(
            names = "--trial",
            paramLabel = "ID",
            description = "A trial of these settings on such a board, as evidence. May be given several times.")
    private List<String> trials = new ArrayList<>();

    @Option(names = "--replace", description = "Replace a profile of that name.")
    private boolean replace;

    @Mixin
    private JsonOption json;

    @Spec
    private CommandSpec spec;

    ProfileSaveCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        ProfileAnswer answer = new ProfileAnswer(spec.commandLine(), json);
        ProfileJob.Save save = new ProfileJob.Save(name, board, cooling, supply, notes, trials, replace);
        return answer.of(() -> new ProfileJob(workplace).save(CardRequest.of(card), save), answer.page()::print);
    }
}
