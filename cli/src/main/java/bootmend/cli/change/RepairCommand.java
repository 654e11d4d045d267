package bootmend.cli.change;

import bootmend.CardException;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.option.SideRequest;
import bootmend.cli.run.CardChanges;
import bootmend.cli.run.Question;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code bootmend repair}: damage on a card found, explained, and repaired where that needs no guess. */
@Command(
        name = "repair",
        header = "Damage on a card found, and repaired where that needs no guess.",
        mixinStandardHelpOptions = true,
        description =
                "Looks for damage on the boot partition and on the config file's name and form, shows what it found "
                        + "and what it would write, and asks. It can be undone with `bootmend undo`. With --from, boot files come from a good card instead. Partition tables are never "
                        + "touched; files that share clusters and names that stand twice are reported only.",
        footer = {
            "",
            "Before you repair a card that holds the only copy of something, make an image of it and work on that.",
            "",
            "Examples:",
            "  bootmend repair --dry-run lab-07.img",
            "  bootmend repair --yes --free-lost lab-07.img",
            "  bootmend repair lab-07.img --from lab-08.img --board pi4"
        })
public final class RepairCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardsArgument argument;

    @Mixin
    private BatchOptions batch;

    @Mixin
    private ChangeOptions options;

    @Option(
            names = "--free-lost",
            description = "Also free clusters that belong to no file. They may hold pieces of files that are gone.")
    private boolean freeLost;

    @ArgGroup(validate = false)
    private FromGood good = new FromGood();

    @Spec
    private CommandSpec spec;

    /** Boot files from a good card, in place of the file system's own repair. */
    static final class FromGood {

        @Option(
                names = "--from",
                paramLabel = "GOOD",
                description =
                        "Write the boot files that are missing or damaged (see `bootmend diagnose`) from this card, image, "
                                + "folder or kept files, once those are found whole and fit for the boards.")
        private String from;

        @Option(
                names = "--board",
                paramLabel = "B",
                description =
                        "With --from: the board the card is for, such as pi4; by default every board that it can be meant "
                                + "for.")
        private String board;

        @Option(
                names = "--file",
                paramLabel = "PATH",
                description =
                        "With --from: also take this file as it is there, even the card's own, such as cmdline.txt. May be "
                                + "given several times.")
        private List<String> files = new ArrayList<>();
    }

    public RepairCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() throws CardException, IOException {
        if (good.from != null) {
            return fromGood();
        }
        if (good.board != null || !good.files.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--board and --file go with --from");
        }
        return new CardChanges(spec.commandLine(), argument, options, batch, question)
                .run(
                        options.on(workplace),
                        options.order(new ChangeRequest.Repair(freeLost)),
                        "There is nothing to repair.");
    }

    private int fromGood() throws CardException, IOException {
        if (freeLost) {
            throw new ParameterException(spec.commandLine(), "--free-lost does not go with --from");
        }
        return new CardChanges(spec.commandLine(), argument, options, batch, question)
                .run(
                        options.on(workplace),
                        options.order(new ChangeRequest.FromGood(
                                SideRequest.of(good.from), Optional.ofNullable(good.board), good.files)),
                        "No boot file of this card is to be replaced.");
    }
}
