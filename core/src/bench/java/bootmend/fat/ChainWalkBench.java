package bootmend.fat;

import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Following a file's chain of 10,000 clusters on a volume in memory, in order or with gaps of 200 clusters. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class ChainWalkBench {

    private static final int CLUSTERS = 10_000;

    @Param({"FAT16", "FAT32"})
    public FatType type;

    /** 200 leads out of each FAT sector at every step. */
    @Param({"1", "200"})
    public int stride;

    private SparseDisk disk;
    private Geometry geometry;
    private long first;

    @Setup
    public void prepare() throws IOException {
        FatSpec spec = (type == FatType.FAT16 ? FatSpec.fat16(60_000) : FatSpec.fat32(3_000_000)).build();
        disk = spec.emptyDisk();
        first = new FatBuilder(spec)
                .stride(stride)
                .add("", FatItem.zeros("LOG.CSV", CLUSTERS * 512L))
                .writeTo(disk, 0)
                .chain("LOG.CSV")[0];
        geometry = FatVolume.open(disk).geometry();
    }

    @Benchmark
    public long walk() throws IOException {
        FatTable table = new FatTable(new VolumeBytes(disk, geometry.bytesPerSector()), geometry, 0);
        ChainWalk walk = new ChainWalk(geometry, table, first, CLUSTERS);
        long clusters = 0;
        while (walk.ending() == null) {
            clusters += walk.nextRun(Integer.MAX_VALUE).size();
        }
        if (clusters != CLUSTERS || walk.ending() != ChainEnding.COMPLETE) {
            throw new IllegalStateException("the chain came to " + clusters + " clusters");
        }
        return clusters;
    }
}
