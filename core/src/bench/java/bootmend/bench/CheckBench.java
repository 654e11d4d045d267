package bootmend.bench;

import bootmend.finding.Purpose;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SampleBootFiles;
import bootmend.fixtures.SparseDisk;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.CheckView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/**
 * The check of a card whose boot partition is a FAT32 volume of 512 MiB that its files fill to the last cluster.
 *
 * <p>The card is a sparse image file; what is read of it comes from the system's cache.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class CheckBench {

    private static final int SECTOR = 512;
    private static final long START = 8192;
    private static final long SECTORS = (512L << 20) / SECTOR;
    private static final int LOGS = 400;

    /** Sectors a cluster: 8 are usual at this size, 1 gives the longest FAT. */
    @Param({"8", "1"})
    public int perCluster;

    private Path folder;
    private Workplace workplace;
    private CheckRequest request;

    @Setup(Level.Trial)
    public void prepare() throws IOException {
        folder = Files.createTempDirectory("bench-card");
        Path image = folder.resolve("lab-card.img");
        fullCard(perCluster).writeTo(image);
        workplace = Workplace.ofThisComputer(folder.resolve("data"));
        request = new CheckRequest(CardRequest.of(image), Purpose.SHIP, BoardRequest.none());
    }

    @TearDown(Level.Trial)
    public void remove() throws IOException {
        Files.deleteIfExists(request.card().card());
        Files.deleteIfExists(folder);
    }

    @Benchmark
    public CheckView check() throws IOException {
        return new CheckJob(workplace).run(request);
    }

    private static SparseDisk fullCard(int perCluster) throws IOException {
        FatSpec spec = FatSpec.fat32(100_000)
                .sectorsPerCluster(perCluster)
                .filling(SECTORS * SECTOR)
                .build();
        FatBuilder volume = new FatBuilder(spec).add("", FatItem.file("config.txt", ConfigText.demo()));
        for (Map.Entry<String, byte[]> file :
                SampleBootFiles.bootRoot(1_500_000, 3 << 20).entrySet()) {
            volume.file(file.getKey(), file.getValue());
        }
        volume.directory("overlays");
        for (String overlay : SampleBootFiles.overlayNames()) {
            volume.file("overlays/" + overlay + ".dtbo", SampleBootFiles.named(overlay + ".dtbo", 1_500));
        }
        volume.directory("logs");
        for (int i = 0; i < LOGS; i++) {
            volume.add("logs", FatItem.zeros("LOG%05d.CSV".formatted(i), 1 << 20));
        }
        SparseDisk disk = new MbrBuilder((START + SECTORS) * SECTOR, SECTOR)
                .partition(0x0C, START, SECTORS)
                .build();
        volume.fillUpTo(0).writeTo(disk, START * SECTOR);
        return disk;
    }
}
