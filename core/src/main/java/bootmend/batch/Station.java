package bootmend.batch;

import bootmend.CardException;
import bootmend.StepWords;
import bootmend.device.system.AttachedDisk;
import bootmend.device.system.DiskList;
import bootmend.request.CardRequest;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Watches for cards being put in and does a job on each, one at a time.
 *
 * <p>What was attached when it started is left alone until it was away, unless it was named; so are built-in disks, disks
 * that hold the running system, and loop devices, which nobody puts in. A card counts as taken out when it is missing from
 * {@value #AWAY} lists in a row, and as put in when it is on two, so that a list that comes out short once starts nothing.
 */
public final class Station {

    private static final int AWAY = 3;
    private static final String LOOP = "loop";

    private final DiskList disks;
    private final StationWork work;
    private final Set<Path> named;
    private final StepWords words;
    /** Devices whose card had its turn or is to be left alone, with how many lists in a row each was missing from. */
    private final Map<Path, Integer> settled = new HashMap<>();

    private Set<Path> seenBefore = new HashSet<>();
    private int turns;

    /**
     * @param named devices that are taken even where they were there at the start or are loop devices
     * @param words what says the steps
     */
    public Station(StationWork work, Set<Path> named, StepWords words) {
        this(DiskList.ofThisComputer(), work, named, words);
    }

    Station(DiskList disks, StationWork work, Set<Path> named, StepWords words) {
        this.disks = disks;
        this.work = work;
        this.named = Set.copyOf(named);
        this.words = words;
    }

    /** The time between two looks at the list; the station ends when there is to be no other. */
    @FunctionalInterface
    public interface Pace {
        /** Waits, then says whether to go on. */
        boolean next();
    }

    /** Runs until {@code pace} ends it, which is asked before each card and each look, never during a card's turn. */
    public void run(Pace pace, Consumer<StationTurn> told) {
        for (AttachedDisk disk : disks.now()) {
            if (!named.contains(disk.path())) {
                settled.put(disk.path(), 0);
            }
        }
        while (pace.next()) {
            Optional<AttachedDisk> card = look();
            if (card.isPresent()) {
                settled.put(card.get().path(), 0);
                told.accept(turn(card.get()));
            }
        }
    }

    /** The first card that waits for its turn; the others come at the next looks. */
    private Optional<AttachedDisk> look() {
        List<AttachedDisk> now = disks.now();
        Set<Path> here = now.stream().map(AttachedDisk::path).collect(Collectors.toSet());
        settled.replaceAll((path, away) -> here.contains(path) ? 0 : away + 1);
        settled.values().removeIf(away -> away >= AWAY);
        Optional<AttachedDisk> card = now.stream()
                .filter(disk -> !settled.containsKey(disk.path()) && seenBefore.contains(disk.path()))
                .filter(this::isWanted)
                .findFirst();
        seenBefore = here;
        return card;
    }

    private boolean isWanted(AttachedDisk disk) {
        return named.contains(disk.path())
                || disk.removable() && disk.system().isEmpty() && !disk.bus().equals(LOOP);
    }

    private StationTurn turn(AttachedDisk disk) {
        turns++;
        String path = disk.name().text();
        try {
            StationWork.Result result = work.on(CardRequest.of(disk.path()));
            return new StationTurn(turns, path, result.outcome(), result.words(), Optional.empty());
        } catch (CardException e) {
            return failed(path, e);
        } catch (RuntimeException e) {
            // One card that nobody foresaw must not stop the station.
            return failed(
                    path,
                    CardException.unreadable(
                            "something unforeseen happened (" + e + ")", "Set the card aside and report it.", e));
        }
    }

    private StationTurn failed(String path, CardException e) {
        boolean pulled =
                disks.now().stream().noneMatch(disk -> disk.path().toString().equals(path));
        String failure = (pulled ? "The card was taken out too early: " : "Not done: ") + e.getMessage() + ". "
                + words.remedy(e);
        return new StationTurn(turns, path, StationTurn.Outcome.FAILED, failure, Optional.of(e));
    }
}
