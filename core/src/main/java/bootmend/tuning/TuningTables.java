package bootmend.tuning;

/**
 * bootmend's tables, each read from its data file at its first use and then kept by this object.
 *
 * <p>Every accessor throws {@link DataFileException} where a data file is damaged.
 */
public final class TuningTables {

    private final Lazy<Sources> sources = new Lazy<>(() -> Sources.read(DataFile.resource("sources.csv")));
    private final Lazy<Vocabulary> vocabulary =
            new Lazy<>(() -> Vocabulary.read(DataFile.resource("tuning-keys.csv"), sources()));
    private final Lazy<StockValues> stock = new Lazy<>(() -> StockValues.read(
            DataFile.resource("stock-values.csv"), DataFile.resource("stock-changes.csv"), vocabulary(), sources()));
    private final Lazy<Boards> boards = new Lazy<>(() -> Boards.read(DataFile.resource("boards.csv")));
    private final Lazy<ThrottleBits> throttleBits =
            new Lazy<>(() -> ThrottleBits.read(DataFile.resource("throttle-bits.csv")));
    private final Lazy<VoltageSteps> voltageSteps =
            new Lazy<>(() -> VoltageSteps.read(DataFile.resource("voltage-steps.csv"), vocabulary(), sources()));
    private final Lazy<VoltageControls> voltageControls =
            new Lazy<>(() -> VoltageControls.read(DataFile.resource("voltage-controls.csv"), vocabulary(), sources()));
    private final Lazy<Revisions> revisions = new Lazy<>(() ->
            Revisions.read(DataFile.resource("processors.csv"), DataFile.resource("old-revision-codes.csv"), boards()));
    private final Lazy<Cautions> cautions =
            new Lazy<>(() -> Cautions.read(DataFile.resource("cautions.csv"), sources()));
    private final Lazy<KeyMeanings> meanings =
            new Lazy<>(() -> KeyMeanings.read(DataFile.resource("key-meanings.csv"), vocabulary()));

    private final Lazy<Reaches> reaches =
            new Lazy<>(() -> Reaches.read(DataFile.resource("reach.csv"), vocabulary(), sources()));
    private final Lazy<FilterBoards> filters =
            new Lazy<>(() -> FilterBoards.read(DataFile.resource("filters.csv"), sources()));

    private TuningTables() {}

    /** Tables of which none has been read yet. */
    public static TuningTables load() {
        return new TuningTables();
    }

    public Sources sources() {
        return sources.get();
    }

    public Vocabulary vocabulary() {
        return vocabulary.get();
    }

    public StockValues stock() {
        return stock.get();
    }

    public Boards boards() {
        return boards.get();
    }

    public ThrottleBits throttleBits() {
        return throttleBits.get();
    }

    public VoltageSteps voltageSteps() {
        return voltageSteps.get();
    }

    public VoltageControls voltageControls() {
        return voltageControls.get();
    }

    public Revisions revisions() {
        return revisions.get();
    }

    public Cautions cautions() {
        return cautions.get();
    }

    public KeyMeanings meanings() {
        return meanings.get();
    }

    public Reaches reaches() {
        return reaches.get();
    }

    public FilterBoards filters() {
        return filters.get();
    }
}
