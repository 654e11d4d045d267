package bootmend.cli.change;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.cli.option.BatchOptions;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.option.InFileOption;
import bootmend.cli.run.CardChanges;
import bootmend.cli.run.Question;
import bootmend.cli.text.ErrorWords;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.LikeJob;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
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
        header = "A card's tuning lines back to stock, to a profile, to an earlier version, or to another card's.",
        mixinStandardHelpOptions = true,
        description =
                "Comments the active tuning lines out, so that the board runs at stock; with --to, puts a profile's "
                        + "settings there instead, with --like another card's, and with --to-earlier those that the card "
                        + "had before (see `bootmend earlier`). Shows the change first and asks; it can be undone with "
                        + "`bootmend undo`.",
        footer = {
            "",
            "Examples:",
            "  bootmend reset --dry-run lab-07.img",
            "  bootmend reset --yes lab-07.img",
            "  bootmend reset lab-07.img --to cart-3",
            "  bootmend reset lab-08.img --like lab-07.img --board pi4",
            "  bootmend reset lab-07.img --to-earlier 1",
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
                names = "--like",
                paramLabel = "CARD",
                description = "Put the tuning settings of this card or config file on the card instead of stock.")
        private Path like;

        @Option(
                names = "--to-earlier",
                paramLabel = "N",
                description =
                        "Put the tuning lines of an earlier version back, by its number in `bootmend earlier` or the "
                                + "beginning of its sha256.")
        private String earlier;

        @Option(
                names = "--whole",
                description = "With --to-earlier: put the whole file back, not its tuning lines alone.")
        private boolean whole;

        @Option(
                names = "--board",
                paramLabel = "B",
                description =
                        "With --to: the board the card is for, if not the profile's. With --like: the board both cards are "
                                + "for, if they can be meant for several. With --to-earlier: put the tuning lines back for "
                                + "this board alone.")
        private String board;

        @Option(
                names = "--other-board",
                description =
                        "With --to or --like: put settings for another board on the card. The board may not boot with "
                                + "them.")
        private boolean otherBoard;

        @Option(
                names = "--despite-blockers",
                description =
                        "With --to, --like or --to-earlier: put it on the card although a check finds a blocker in it. That "
                                + "may harm the board or permanently void its warranty.")
        private boolean despiteBlockers;
    }

    public ResetCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() throws CardException, IOException {
        if (profile.earlier != null) {
            return toEarlier();
        }
        if (profile.whole) {
            throw new ParameterException(spec.commandLine(), "--whole goes with --to-earlier");
        }
        if (profile.name == null && profile.like == null) {
            return toStock();
        }
        if (profile.name != null && profile.like != null) {
            throw new ParameterException(spec.commandLine(), "--to and --like exclude each other");
        }
        if (remove || !also.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--remove and --also do not go with --to or --like");
        }
        return profile.name != null ? toProfile() : like();
    }

    private int toEarlier() throws CardException, IOException {
        if (profile.name != null || profile.like != null || remove || !also.isEmpty() || profile.otherBoard) {
            throw new ParameterException(
                    spec.commandLine(), "--to, --like, --remove, --also and --other-board do not go with --to-earlier");
        }
        if (profile.whole && profile.board != null) {
            throw new ParameterException(
                    spec.commandLine(), "--board puts tuning lines back for one board; it does not go with --whole");
        }
        ChangeOrder order = options.order(
                new ChangeRequest.ToEarlier(profile.earlier, profile.whole, Optional.ofNullable(profile.board)));
        if (profile.despiteBlockers) {
            order = order.accepting(Allow.BLOCKERS);
        }
        return run(order, "The card has that version's tuning lines already; nothing to do.");
    }

    private int toProfile() throws CardException, IOException {
        return run(
                order(new ChangeRequest.ToProfile(profile.name, Optional.ofNullable(profile.board))),
                "The card has this profile's settings already; nothing to do.");
    }

    private int like() throws CardException, IOException {
        ChangeOrder stock = order(ChangeRequest.ToStock.PLAIN);
        ChangeRequest request;
        try {
            request = new LikeJob(workplace)
                    .read(CardRequest.of(profile.like), Optional.ofNullable(profile.board), stock.accepted());
        } catch (CardException e) {
            return new ErrorWords(spec.commandLine().getErr()).tell(profile.like.toString(), e);
        }
        return run(stock.with(request), "The card has these settings already; nothing to do.");
    }

    private ChangeOrder order(ChangeRequest request) {
        ChangeOrder order = options.order(request);
        if (profile.otherBoard) {
            order = order.accepting(Allow.OTHER_BOARD);
        }
        return profile.despiteBlockers ? order.accepting(Allow.BLOCKERS) : order;
    }

    private int toStock() throws CardException, IOException {
        if (profile.board != null || profile.otherBoard || profile.despiteBlockers) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--board, --other-board and --despite-blockers go with --to, --like or --to-earlier");
        }
        return run(
                options.order(new ChangeRequest.ToStock(remove, also)), "The card is at stock already; nothing to do.");
    }

    private int run(ChangeOrder order, String nothing) throws CardException, IOException {
        return new CardChanges(spec.commandLine(), argument, options, batch, question, result.inFile())
                .run(options.on(workplace), order, nothing);
    }
}
