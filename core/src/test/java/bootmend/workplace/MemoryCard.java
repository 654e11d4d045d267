package bootmend.workplace;

import bootmend.CardException;
import bootmend.device.CardSource;
import bootmend.device.PartitionWindow;
import bootmend.device.RecordingDevice;
import bootmend.fat.FatVolume;
import bootmend.fat.FileContent;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeRequest;
import bootmend.operation.TriedChange;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import bootmend.view.ShowJob;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.function.UnaryOperator;

/** A card in memory with a workplace of its own, on which whole jobs run. */
public final class MemoryCard {

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T08:30:00Z"), ZoneOffset.UTC);
    private static final CardRequest REQUEST = CardRequest.of(Path.of("lab-card.img"));

    public final SparseDisk disk;
    public final FatLayout layout;
    private final FileSystem host = Jimfs.newFileSystem(Configuration.unix());
    private final long start;
    private RecordingDevice device;

    public MemoryCard(SparseDisk disk, long start, FatLayout layout) {
        this.disk = disk;
        this.start = start;
        this.layout = layout;
    }

    public static MemoryCard of(FatSpec spec, UnaryOperator<FatBuilder> content) throws IOException {
        SparseDisk disk = spec.emptyDisk();
        FatBuilder builder = new FatBuilder(spec).file("start4.elf", new byte[3000]);
        return new MemoryCard(disk, 0, content.apply(builder).writeTo(disk, 0));
    }

    public static MemoryCard withConfig(FatSpec spec, String config) throws IOException {
        return of(spec, builder -> builder.file("config.txt", ascii(config)));
    }

    /** A small FAT16 card without a table. */
    public static MemoryCard withConfig(String config) throws IOException {
        return withConfig(FatSpec.fat16(5000).build(), config);
    }

    public Workplace workplace() {
        // A real card is closed after each job; the disk behind this one stays open for the next.
        return new Workplace(host.getPath("/lab/data"), CLOCK, (path, forChanging) -> {
            device = new RecordingDevice(new PartitionWindow(disk, 0, disk.getSize()));
            return CardSource.of(path, device).keyed("cid:" + System.identityHashCode(disk));
        });
    }

    /** What the last job did to the card. */
    public RecordingDevice lastJob() {
        return device;
    }

    public CardView show() throws CardException, IOException {
        return new ShowJob(workplace()).run(REQUEST);
    }

    public TriedChange begin(ChangeRequest.ToStock reset) throws CardException, IOException {
        return TriedChange.of(workplace(), REQUEST, reset);
    }

    /** Resets where there is something to reset; returns whether there was. */
    public boolean reset(ChangeRequest.ToStock reset) throws CardException {
        return TriedChange.make(workplace(), REQUEST, reset);
    }

    public boolean undo() throws CardException {
        return TriedChange.make(workplace(), REQUEST, ChangeRequest.Undo.LAST);
    }

    public byte[] read(String path) throws IOException {
        FatVolume volume = FatVolume.open(new PartitionWindow(disk, start, disk.getSize() - start));
        FileContent content = volume.read(volume.find(path).orElseThrow(), 1 << 21);
        if (!content.isWhole()) {
            throw new AssertionError(path + ": " + content.warnings());
        }
        return content.bytes();
    }

    public String text(String path) throws IOException {
        return new String(read(path), StandardCharsets.ISO_8859_1);
    }

    public static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
