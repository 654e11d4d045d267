package bootmend.cli.card;

import bootmend.CardException;
import bootmend.cli.option.JsonOption;
import bootmend.cli.option.SideRequest;
import bootmend.cli.run.Answer;
import bootmend.cli.text.ComparePage;
import bootmend.view.CompareJob;
import bootmend.view.CompareSource;
import bootmend.workplace.Workplace;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend compare}: how two cards differ. */
@Command(
        name = "compare",
        header = "How two cards, config files or profiles differ.",
        mixinStandardHelpOptions = true,
        description =
                "Shows what boards make of each: the tuning settings that differ, everything else in the config files "
                        + "that differs, and, of two cards, the files that do. Boards with the same differences are "
                        + "told together. Writes nothing.",
        footer = {
            "",
            "Examples:",
            "  bootmend compare lab-07.img lab-08.img --board pi4",
            "  bootmend compare lab-07.img cart-3",
            "  bootmend compare config.txt /boot/firmware"
        })
public final class CompareCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(
            index = "0",
            paramLabel = "A",
            description = "A card, a config file (- for standard input), or, where there is no file of that name, a "
                    + "profile.")
    private String left;

    @Parameters(index = "1", paramLabel = "B", description = "What to compare it with, likewise.")
    private String right;

    @Option(
            names = "--board",
            paramLabel = "B",
            description = "Compare for this board, such as pi4; by default for every board that both can be meant for.")
    private String board;

    @Mixin
    private JsonOption json;

    @Spec
    private CommandSpec spec;

    public CompareCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        return new Answer(spec.commandLine(), json.json())
                .of(
                        () -> new CompareJob(workplace).run(source(left), source(right), Optional.ofNullable(board)),
                        (screen, view) -> new ComparePage(screen).print(view));
    }

    private CompareSource source(String name) throws CardException {
        boolean file = SideRequest.isStandardInput(name)
                || Files.exists(Path.of(name))
                || !workplace.profiles().names().contains(name);
        return file ? new CompareSource.OfCard(SideRequest.of(name)) : new CompareSource.OfProfile(name);
    }
}
