package bootmend.cli.change;

import bootmend.CardException;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.run.CardChanges;
import bootmend.cli.run.Question;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend repair}: damage on a card found, explained, and repaired where that needs no guess. */
@Command(
        name = "repair",
        header = "Damage on a card found, and repaired where that needs no guess.",
        mixinStandardHelpOptions = true,
        description =
                "Looks for damage on the boot partition and on the config file's name and form, shows what it found "
                        + "and what it would write, and asks. It can be undone with `bootmend undo`. Partition tables are never "
                        + "touched; files that share clusters and names that stand twice are reported only.",
        footer = {
            "",
            "Before you repair a card that holds the only copy of something, make an image of it and work on that.",
            "",
            "Examples:",
            "  bootmend repair --dry-run lab-07.img",
            "  bootmend repair --yes --free-lost lab-07.img"
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

    @Spec
    private CommandSpec spec;

    public RepairCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() throws CardException, IOException {
        return new CardChanges(spec.commandLine(), argument, options, batch, question)
                .run(
                        options.on(workplace),
                        options.order(new ChangeRequest.Repair(freeLost)),
                        "There is nothing to repair.");
    }
}
