package bootmend.cli.change;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.option.InFileOption;
import bootmend.cli.run.CardChanges;
import bootmend.cli.run.Question;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code bootmend reset}: a card's tuning lines back to stock. */
@Command(
        name = "reset",
        header = "A card's tuning lines back to stock, or to a profile.",
        mixinStandardHelpOptions = true,
        description =
                "Comments the active tuning lines out, so that the board runs at stock; with --to, puts a profile's "
                        + "settings there instead. Shows the change first and asks; it can be taken back with `bootmend undo`.",
        footer = {
            "",
            "Examples:",
            "  bootmend reset --dry-run lab-07.img",
            "  bootmend reset --yes lab-07.img",
            "  bootmend reset lab-07.img --to cart-3",
            "  bootmend reset --yes --report lab.html lab-images/"
        })
public final class ResetCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardsArgument argument;

    @Mixin
    private BatchOptions batch;

    @Mixin
    private ChangeOptions options;

    @Mixin
    private InFileOption result;

    @Option(names = "--remove", description = "Take the lines out instead of commenting them out.")
    private boolean remove;

    @Option(
            names = "--also",
            paramLabel = "KEY",
            description = "Reset lines of this key too, though a reset leaves them alone by itself, such as arm_boost.")
    private Set<String> also = new HashSet<>();

    @ArgGroup(validate = false)
    private ToProfile profile = new ToProfile();

    @Spec
    private CommandSpec spec;

    /** To a profile instead of stock. */
    static final class ToProfile {

        @Option(
                names = "--to",
                paramLabel = "NAME",
                description =
                        "Put this profile's settings on the card instead of stock: its lines are set or added, every "
                                + "other tuning line for its board is commented out.")
        private String name;

        @Option(
                names = "--board",
                paramLabel = "B",
                description = "With --to: the board the card is for, if not the profile's.")
        private String board;

        @Option(
                names = "--other-board",
                description = "With --to: put a profile of another board on the card. The board may not boot with it.")
        private boolean otherBoard;

        @Option(
                names = "--despite-blockers",
                description =
                        "With --to: put a profile on the card although a check finds a blocker in it. That may harm the "
                                + "board or permanently void its warranty.")
        private boolean despiteBlockers;
    }

    public ResetCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() throws CardException, IOException {
        return profile.name == null ? toStock() : toProfile();
    }

    private int toProfile() throws CardException, IOException {
        if (remove || !also.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--remove and --also do not go with --to");
        }
        ChangeOrder order =
                options.order(new ChangeRequest.ToProfile(profile.name, Optional.ofNullable(profile.board)));
        if (profile.otherBoard) {
            order = order.accepting(Allow.OTHER_BOARD);
        }
        if (profile.despiteBlockers) {
            order = order.accepting(Allow.BLOCKERS);
        }
        return run(order, "The card has this profile's settings already; nothing to do.");
    }

    private int toStock() throws CardException, IOException {
        if (profile.board != null || profile.otherBoard || profile.despiteBlockers) {
            throw new ParameterException(
                    spec.commandLine(), "--board, --other-board and --despite-blockers go with --to");
        }
        return run(
                options.order(new ChangeRequest.ToStock(remove, also)), "The card is at stock already; nothing to do.");
    }

    private int run(ChangeOrder order, String nothing) throws CardException, IOException {
        return new CardChanges(spec.commandLine(), argument, options, batch, question, result.inFile())
                .run(options.on(workplace), order, nothing);
    }
}
