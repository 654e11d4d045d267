package bootmend.cli.change;

import bootmend.CardException;
import bootmend.batch.Station;
import bootmend.batch.StationLog;
import bootmend.batch.StationTurn;
import bootmend.batch.StationWork;
import bootmend.cli.option.PurposeConverter;
import bootmend.cli.outcome.CommandWords;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.StopSignal;
import bootmend.cli.text.Screen;
import bootmend.finding.Purpose;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.page.Amount;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code bootmend station}: card after card through one reader. */
@Command(
        name = "station",
        header = "Card after card through a reader, without asking.",
        mixinStandardHelpOptions = true,
        description = "Watches for cards being put in, does the job on each without asking, and says when to take the "
                + "card out. What was attached when it started is left alone, as are built-in disks and loop devices. Ctrl-C ends it after "
                + "the card being worked on. Switch automatic mounting off first: a mounted card is refused.",
        footer = {
            "",
            "Examples:",
            "  bootmend station --do reset",
            "  bootmend station --do reset --to cart-3",
            "  bootmend station --do check --for ship"
        })
public final class StationCommand implements Callable<Integer> {

    private static final long POLL_MILLIS = 1000;

    /** What is done with each card. */
    enum Job {
        reset,
        check
    }

    private final Workplace workplace;

    @Option(names = "--do", required = true, paramLabel = "JOB", description = "reset or check.")
    private Job job;

    @Option(
            names = "--to",
            paramLabel = "NAME",
            description = "With reset: put this profile's settings there, not stock.")
    private String profile;

    @Option(
            names = "--for",
            paramLabel = "PURPOSE",
            converter = PurposeConverter.class,
            description = "With check: ship, firmware-update or stability-run.")
    private Purpose purpose;

    @Option(
            names = "--also",
            paramLabel = "DEVICE",
            description = "Also take this device, though it is there already or is a loop device.")
    private Set<Path> also = new HashSet<>();

    @Option(names = "--cards", paramLabel = "N", description = "Stop after N cards.")
    private Integer cards;

    @Option(
            names = "--log",
            paramLabel = "FILE",
            description =
                    "Add a line for each card to this file; station.log in bootmend's data folder if none is named.")
    private Path log;

    @Spec
    private CommandSpec spec;

    public StationCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() throws CardException {
        StationWork work = work();
        StationLog file = StationLog.at(log == null ? workplace.home().resolve("station.log") : log);
        Screen screen = new Screen(
                spec.commandLine().getOut(), spec.commandLine().getColorScheme().ansi());
        screen.line("Put a card in. The log is " + file.file() + "; Ctrl-C ends the station after the card in hand.");
        AtomicInteger done = new AtomicInteger();
        AtomicInteger worst = new AtomicInteger(ExitCode.DONE);
        try (StopSignal signal = new StopSignal()) {
            new Station(work, also, CommandWords.withoutCard())
                    .run(() -> (cards == null || done.get() < cards) && signal.pause(POLL_MILLIS), turn -> {
                        done.incrementAndGet();
                        worst.accumulateAndGet(code(turn), Math::max);
                        tell(screen, file, turn);
                    });
            screen.line("The station ended after " + Amount.count(done.get(), "card") + ".");
        }
        return worst.get();
    }

    private StationWork work() {
        if (job == Job.check) {
            if (purpose == null || profile != null) {
                throw new ParameterException(
                        spec.commandLine(), "--do check goes with --for, and --to with --do reset");
            }
            return StationWork.check(workplace, purpose);
        }
        if (purpose != null) {
            throw new ParameterException(spec.commandLine(), "--for goes with --do check");
        }
        return StationWork.change(
                workplace,
                ChangeOrder.of(
                        profile == null
                                ? ChangeRequest.ToStock.PLAIN
                                : new ChangeRequest.ToProfile(profile, Optional.empty())));
    }

    private static int code(StationTurn turn) {
        return turn.error()
                .map(ExitCode::of)
                .orElse(turn.outcome() == StationTurn.Outcome.NOT_READY ? ExitCode.BLOCKER : ExitCode.DONE);
    }

    private void tell(Screen screen, StationLog file, StationTurn turn) {
        screen.line("bold", "Card " + turn.number() + " in " + turn.path() + ": " + words(turn.outcome()));
        screen.line(turn.words());
        try {
            file.add(Instant.now(), turn);
        } catch (IOException e) {
            spec.commandLine().getErr().println("bootmend: the log could not be added to (" + e.getMessage() + ").");
        }
        spec.commandLine().getOut().flush();
    }

    private static String words(StationTurn.Outcome outcome) {
        return switch (outcome) {
            case DONE -> "done, take it out, next.";
            case NOTHING_TO_DO -> "nothing to do, take it out, next.";
            case NOT_READY -> "NOT READY, set it aside, next.";
            case FAILED -> "NOT DONE, set it aside, next.";
        };
    }
}
