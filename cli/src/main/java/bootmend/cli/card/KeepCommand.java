package bootmend.cli.card;

import bootmend.cli.option.CardArgument;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.KeepWords;
import bootmend.view.KeepJob;
import bootmend.view.KeepView;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend keep}: a copy of the boot partition's files. */
@Command(
        name = "keep",
        header = "A copy of all files of a card's boot partition, in one zip file.",
        mixinStandardHelpOptions = true,
        description =
                "Keeps every file of the boot partition with its times, and a list of them with their SHA-256 and where "
                        + "the partition lies; the same card gives the same file, byte for byte. It is read back before it "
                        + "is called kept. The card is only read. `diagnose`, `show`, `check`, `compare` and `repair --from` "
                        + "take the file in place of a card. It brings files back, not a file system: an image of the whole "
                        + "card is more.",
        footer = {
            "",
            "Exit code 0 where every file was kept whole, 1 where one is not whole on the card.",
            "",
            "Examples:",
            "  bootmend keep lab-07.img lab-07.zip",
            "  bootmend diagnose lab-07.zip"
        })
public final class KeepCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Mixin
    private CardArgument card;

    @Parameters(index = "1", paramLabel = "FILE.zip", description = "Where to keep the files; must not be there yet.")
    private Path file;

    @Option(names = "--replace", description = "Replace the file that is there.")
    private boolean replace;

    @Spec
    private CommandSpec spec;

    public KeepCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), card);
        return answer.of(() -> {
            KeepView kept = new KeepJob(workplace).run(card.request(), file, replace);
            if (card.json()) {
                answer.json(kept);
            } else {
                new KeepWords(answer.screen()).print(kept);
            }
            return kept.isWhole() ? ExitCode.DONE : ExitCode.BLOCKER;
        });
    }
}
