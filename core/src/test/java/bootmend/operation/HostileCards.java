package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.card.PartitionView;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.DeviceEvent;
import bootmend.device.RecordingDevice;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.GptBuilder;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.tuning.TuningTables;
import bootmend.view.CardView;
import bootmend.view.ShowJob;
import bootmend.workplace.Workplace;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.LongAdder;

/** Healthy cards to damage, and every job run on a damaged one within limits. */
final class HostileCards {

    private static final CardRequest CARD = CardRequest.of(Path.of("/cards/hostile.img"));
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-02-03T10:11:12Z"), ZoneOffset.UTC);
    /** The largest base card takes 90 accesses when healthy; a chain of every cluster would take more than this. */
    private static final long MOST_ACCESSES = 20_000;

    private static final int MOST_BYTES = 1 << 20;

    private final LongAdder shown = new LongAdder();
    private final LongAdder changed = new LongAdder();
    private final TuningTables tables = TuningTables.load();

    /** A healthy card and where to damage it. */
    record Base(SparseDisk disk, List<Mutation.Region> regions) {}

    /** How many damaged cards could still be shown. */
    long shown() {
        return shown.sum();
    }

    /** How many damaged cards could still be reset. */
    long changed() {
        return changed.sum();
    }

    /** Runs every job on {@code card}; anything but an answer or an error with its own words comes out of here. */
    void survive(SparseDisk card) throws IOException {
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            show(host, card);
            reset(host, card);
        }
    }

    private void show(FileSystem host, SparseDisk card) {
        try {
            CardView view = new ShowJob(workplace(host, card)).run(CARD);
            if (view.config().isPresent()) {
                shown.increment();
            }
        } catch (CardException e) {
            assertThat(new StepNames().remedy(e)).isNotBlank();
        }
    }

    private void reset(FileSystem host, SparseDisk card) throws IOException {
        RecordingDevice recorded = new RecordingDevice(card);
        int planned = 0;
        PartitionView partition = null;
        try {
            TriedChange change = TriedChange.of(workplace(host, recorded), CARD, ChangeRequest.ToStock.PLAIN);
            planned = change.plan().sectorsWritten();
            partition = change.card().partition();
            if (!change.isNothing()) {
                change.apply();
                changed.increment();
            }
        } catch (CardException e) {
            assertThat(new StepNames().remedy(e)).isNotBlank();
        }
        List<DeviceEvent.Write> writes = recorded.writes();
        assertThat(writes.size()).isIn(0, planned);
        for (DeviceEvent.Write write : writes) {
            long start = partition.firstSector() * partition.sectorBytes();
            assertThat(write.offset()).isBetween(start + 1, start + partition.bytes() - write.bytes().length);
        }
    }

    private Workplace workplace(FileSystem host, BlockDevice device) {
        CardOpener opener =
                (path, forChanging) -> CardSource.of(path, new LimitedDevice(device, MOST_ACCESSES, MOST_BYTES))
                        .keyed("cid:1b534d");
        return new Workplace(host.getPath("/home"), CLOCK, opener, tables);
    }

    static List<Base> bases() {
        try {
            SparseDisk mbr =
                    new MbrBuilder(40L << 20, 512).partition(0x0C, 64, 70_000).build();
            SparseDisk gpt = new GptBuilder(8L << 20, 512)
                    .partition(GptBuilder.BASIC_DATA, 64, 8_000, "boot")
                    .build();
            return List.of(
                    base(FatSpec.fat12(500).build(), null, 0),
                    base(FatSpec.fat16(5000).build(), null, 0),
                    base(FatSpec.fat32(65_600).build(), mbr, 64 * 512),
                    base(FatSpec.fat16(5000).sectorsPerCluster(1).build(), gpt, 64 * 512));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static Base base(FatSpec spec, SparseDisk partitioned, long start) throws IOException {
        SparseDisk disk = partitioned == null ? spec.emptyDisk() : partitioned;
        FatLayout layout = new FatBuilder(spec)
                .file("start.elf", new byte[3000])
                .file(
                        "config.txt",
                        ("arm_freq=2000\n[pi4]\nover_voltage=6\ninclude more.txt\n" + "# note\n".repeat(150))
                                .getBytes(StandardCharsets.US_ASCII))
                .file("more.txt", "gpu_freq=700\ninclude config.txt\n".getBytes(StandardCharsets.US_ASCII))
                .file("autoboot.txt", "[all]\nboot_partition=1\n".getBytes(StandardCharsets.US_ASCII))
                .directory("overlays")
                .file("overlays/a very long name for one overlay.dtbo", new byte[700])
                .writeTo(disk, start);
        List<Mutation.Region> regions = new ArrayList<>(List.of(
                new Mutation.Region(start, 90),
                new Mutation.Region(start, 512),
                new Mutation.Region(layout.fatOffset(0), 512),
                new Mutation.Region(layout.fatOffset(1), 512),
                new Mutation.Region(layout.rootOffset(), 512),
                new Mutation.Region(layout.rootOffset(), 320),
                new Mutation.Region(layout.clusterOffset(layout.chain("config.txt")[0]), 512)));
        if (start > 0) {
            regions.add(new Mutation.Region(446, 66));
            regions.add(new Mutation.Region(512, 1024));
        }
        return new Base(disk, regions);
    }
}
