package bootmend.workplace;

import bootmend.change.Committer;
import bootmend.change.UndoStore;
import bootmend.device.CardOpener;
import bootmend.device.StoppableCards;
import bootmend.device.system.FixedDisks;
import bootmend.device.system.LocalCards;
import bootmend.profile.ProfileStore;
import bootmend.trial.TrialStore;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;

/** What the jobs need from the computer they run on: its clock, bootmend's data folder, and the published tables. */
public final class Workplace {

    private final Path home;
    private final CardOpener opener;
    private final Clock clock;
    private final UndoStore store;
    private final ProfileStore profiles;
    private final TuningTables tables;

    /**
     * @param home bootmend's data folder, made when the first undo record is
     * @param opener how a card's name becomes an open card
     */
    public Workplace(Path home, Clock clock, CardOpener opener) {
        this(home, clock, opener, TuningTables.load());
    }

    /** For many workplaces that share their tables. */
    public Workplace(Path home, Clock clock, CardOpener opener, TuningTables tables) {
        this(home, opener, clock, new UndoStore(home), new ProfileStore(home.resolve("profiles")), tables);
    }

    private Workplace(
            Path home, CardOpener opener, Clock clock, UndoStore store, ProfileStore profiles, TuningTables tables) {
        this.home = home;
        this.opener = opener;
        this.clock = clock;
        this.store = store;
        this.profiles = profiles;
        this.tables = tables;
    }

    /** This computer, with the data folder that its system's convention or {@code BOOTMEND_HOME} names. */
    public static Workplace ofThisComputer(Map<String, String> environment) {
        DataFolder folder = new DataFolder(System.getProperty("os.name"), System.getProperty("user.home"), environment);
        return ofThisComputer(folder.path());
    }

    /** This computer, with its data in {@code home}. */
    public static Workplace ofThisComputer(Path home) {
        return new Workplace(home, new LocalClock(), new LocalCards(FixedDisks.REFUSED));
    }

    /** The same, but for a change it also takes disks that are built in or over 2 TiB. */
    public Workplace withFixedDisks() {
        return new Workplace(home, new LocalCards(FixedDisks.ALLOWED), clock, store, profiles, tables);
    }

    /**
     * The same, but cards that are only looked at read no more once {@code stopped} says so; a change is never stopped.
     *
     * @param stopped asked before each read, on the thread that reads
     */
    public Workplace stoppable(BooleanSupplier stopped) {
        return new Workplace(home, new StoppableCards(opener, stopped), clock, store, profiles, tables);
    }

    /** bootmend's data folder on this computer. */
    public Path home() {
        return home;
    }

    /** Ids of every known board, such as {@code pi4}. */
    public List<String> boards() {
        return tables.boards().all().stream().map(Board::id).toList();
    }

    public CardOpener opener() {
        return opener;
    }

    public UndoStore store() {
        return store;
    }

    public TrialStore trials() {
        return new TrialStore(home, tables);
    }

    public ProfileStore profiles() {
        return profiles;
    }

    public Committer committer() {
        return new Committer(store, clock);
    }

    public TuningTables tables() {
        return tables;
    }

    public Instant instant() {
        return clock.instant();
    }

    /** Now, in local time, as FAT keeps it. */
    public LocalDateTime now() {
        return LocalDateTime.now(clock);
    }
}
