package bootmend.bench;

import bootmend.config.ConfigDocument;
import bootmend.device.CardSource;
import bootmend.device.PartitionWindow;
import bootmend.finding.Purpose;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeRequest;
import bootmend.operation.TriedChange;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolver;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.ShowJob;
import bootmend.workplace.Workplace;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Shows how time and memory grow with the lines of a config file, the entries of a folder and the clusters of a FAT.
 *
 * <p>Cards are in memory; where the card is a {@link GrownFat}, how often it was read is told too.
 */
final class Growth {

    private static final int[] LINES = {10, 100, 1_000, 10_000, 100_000};
    private static final int[] ENTRIES = {10, 100, 1_000, 10_000, 60_000};
    /** Two slots an entry, and a folder has room for 65,536. */
    private static final int MOST_LONG_NAMES = 30_000;

    private static final int[] POWERS = {10, 13, 16, 19, 22, 25, 28};
    /** Each step of a scattered chain is a read; over this, nobody would wait for it. */
    private static final int MOST_SCATTERED = 22;

    private static final CardRequest CARD = CardRequest.of(Path.of("lab-card.img"));
    private static final CheckRequest CHECK = new CheckRequest(CARD, Purpose.SHIP, BoardRequest.none());

    private final PrintStream out;
    private final String what;
    private final Gauge gauge = new Gauge();
    private final TuningTables tables = TuningTables.load();

    /** @param what {@code growth} for all, or {@code growth-config}, {@code growth-folder}, {@code growth-fat} */
    Growth(PrintStream out, String what) {
        this.out = out;
        this.what = what;
    }

    void run() throws IOException {
        out.println("| what | size | runs | ms | ns each | MiB allocated | B each | MiB held at most | B each "
                + "| reads |");
        out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            if ("growth-config".startsWith(what)) {
                config(host);
            }
            if ("growth-folder".startsWith(what)) {
                folder(host);
            }
            if ("growth-fat".startsWith(what)) {
                fat(host);
            }
        }
    }

    private void config(FileSystem host) throws IOException {
        Resolver resolver = new Resolver(tables);
        BoardFacts facts = BoardFacts.of(tables.boards().all().get(0));
        for (int lines : LINES) {
            byte[] text = ConfigText.ofLines(lines);
            ConfigDocument document = ConfigDocument.parse(text);
            List<Integer> all =
                    document.lines().stream().map(line -> line.number()).toList();
            row("config: parse", lines, () -> ConfigDocument.parse(text));
            row("config: comment out", lines, () -> document.commentOut(all));
            row(
                    "config: resolve, one board",
                    lines,
                    () -> resolver.resolve("config.txt", document, name -> Optional.empty(), facts));
            SparseDisk card = card(text);
            Workplace workplace = workplace(host.getPath("/lines" + lines), card);
            row("config: show", lines, () -> new ShowJob(workplace).run(CARD, BoardRequest.none()));
            row("config: check", lines, () -> new CheckJob(workplace).run(CHECK));
            row("config: reset, worked out", lines, () -> preview(workplace));
            {
                TriedChange change = TriedChange.of(workplace, CARD, ChangeRequest.ToStock.PLAIN);
                change.apply();
            }
            row(
                    "config: undo, worked out",
                    lines,
                    () -> TriedChange.of(workplace, CARD, ChangeRequest.Undo.LAST)
                            .close());
        }
    }

    private static void preview(Workplace workplace) throws IOException {
        TriedChange.of(workplace, CARD, ChangeRequest.ToStock.PLAIN).close();
    }

    private void folder(FileSystem host) throws IOException {
        for (boolean longNames : new boolean[] {false, true}) {
            for (int entries : ENTRIES) {
                int count = longNames ? Math.min(MOST_LONG_NAMES, entries) : entries;
                Workplace workplace = workplace(host.getPath("/data"), cardOf(count, longNames));
                String name = longNames ? "folder of long names: " : "folder: ";
                row(name + "show", count, () -> new ShowJob(workplace).run(CARD, BoardRequest.none()));
                row(name + "check", count, () -> new CheckJob(workplace).run(CHECK));
            }
        }
    }

    private void fat(FileSystem host) throws IOException {
        for (GrownFat.Fill fill : GrownFat.Fill.values()) {
            for (int power : POWERS) {
                if (fill != GrownFat.Fill.SCATTERED || power <= MOST_SCATTERED) {
                    int clusters = Math.min(GrownFat.MOST_CLUSTERS, 1 << power);
                    GrownFat card = new GrownFat(clusters, fill);
                    Workplace workplace = workplace(host.getPath("/data"), card);
                    String name = "FAT, " + fill.name().toLowerCase(Locale.ROOT) + ": ";
                    row(
                            name + "show",
                            clusters,
                            card::reads,
                            () -> new ShowJob(workplace).run(CARD, BoardRequest.none()));
                    row(name + "check", clusters, card::reads, () -> new CheckJob(workplace).run(CHECK));
                    row(name + "reset, worked out", clusters, card::reads, () -> preview(workplace));
                }
            }
        }
    }

    private static SparseDisk card(byte[] config) throws IOException {
        FatSpec spec = FatSpec.fat16(20_000).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec)
                .file("start4.elf", new byte[3000])
                .file("config.txt", config)
                .writeTo(disk, 0);
        return disk;
    }

    /** The config file is the last of the root folder's files. */
    private static SparseDisk cardOf(int files, boolean longNames) throws IOException {
        FatSpec spec = FatSpec.fat32(70_000 + files).build();
        SparseDisk disk = spec.emptyDisk();
        FatBuilder builder = new FatBuilder(spec).file("start4.elf", new byte[3000]);
        for (int i = 0; i < files - 2; i++) {
            FatItem item = longNames
                    ? FatItem.zeros("log %05d.csv".formatted(i), 100).alias("L%07d.CSV".formatted(i))
                    : FatItem.zeros("L%07d.CSV".formatted(i), 100);
            builder.add("", item);
        }
        builder.file("config.txt", ConfigText.demo()).writeTo(disk, 0);
        return disk;
    }

    private static Workplace workplace(Path data, BlockDevice card) {
        return new Workplace(
                data,
                Clock.systemUTC(),
                (path, forChanging) -> CardSource.of(path, new PartitionWindow(card, 0, card.getSize())));
    }

    private void row(String name, long size, Gauge.Operation operation) {
        row(name, size, () -> 0, operation);
    }

    private void row(String name, long size, LongSupplier reads, Gauge.Operation operation) {
        try {
            Gauge.Reading reading = gauge.of(operation, reads);
            out.printf(
                    Locale.ROOT,
                    "| %s | %,d | %d | %,.3f | %,.1f | %,.2f | %,.1f | %,.2f | %,.1f | %s |%n",
                    name,
                    size,
                    reading.runs(),
                    reading.nanos() / 1e6,
                    (double) reading.nanos() / size,
                    mib(reading.allocated()),
                    (double) reading.allocated() / size,
                    mib(reading.held()),
                    (double) reading.held() / size,
                    reading.count() == 0 ? "" : String.format(Locale.ROOT, "%,d", reading.count()));
        } catch (OutOfMemoryError e) {
            out.printf(Locale.ROOT, "| %s | %,d | | out of memory | | | | | | |%n", name, size);
        } catch (Exception e) {
            throw new IllegalStateException(name + " at " + size, e);
        }
    }

    private static double mib(long bytes) {
        return bytes / (double) (1 << 20);
    }
}
