package bootmend.workplace;

import bootmend.CardException;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.PartitionWindow;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeRequest;
import bootmend.operation.TriedChange;
import bootmend.request.CardRequest;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;

/** A computer with cards in memory, by path, and its data folder in memory too. */
public final class MemoryWorkplace implements AutoCloseable {

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-02-03T10:11:12Z"), ZoneOffset.UTC);

    private final FileSystem host = Jimfs.newFileSystem(Configuration.unix());
    private final Map<Path, SparseDisk> cards = new HashMap<>();

    private boolean keyed = true;

    /** As a card's own register tells it from every other. */
    public static String keyOf(SparseDisk card) {
        return "cid:" + System.identityHashCode(card);
    }

    /** From now on nothing but what stands on cards tells them apart. */
    public void hideKeys() {
        keyed = false;
    }

    /** Puts a card in at {@code path}, in place of what was there. */
    public void insert(String path, SparseDisk card) {
        cards.put(Path.of(path), card);
    }

    public Workplace workplace() {
        CardOpener opener = (path, forChanging) -> {
            SparseDisk card = cards.get(Path.of(path.text()));
            String key = keyed ? keyOf(card) : "";
            // A window, because a job closes its card and the disk is looked at afterwards.
            return CardSource.of(path, new PartitionWindow(card, 0, card.getSize()))
                    .keyed(key);
        };
        return new Workplace(home(), CLOCK, opener);
    }

    public Path home() {
        return host.getPath("/home");
    }

    public void reset(String path) throws CardException, IOException {
        {
            TriedChange change =
                    TriedChange.of(workplace(), CardRequest.of(Path.of(path)), ChangeRequest.ToStock.PLAIN);
            change.apply();
        }
    }

    public void undo(String path, ChangeRequest.Undo request) throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(workplace(), CardRequest.of(Path.of(path)), request);
            change.apply();
        }
    }

    /** A small FAT16 card with that config file. */
    public static SparseDisk card(String config) throws IOException {
        FatSpec spec = FatSpec.fat16(5000).serial(0x1AB).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec)
                .file("start.elf", new byte[2000])
                .file("config.txt", config.getBytes(StandardCharsets.US_ASCII))
                .writeTo(disk, 0);
        return disk;
    }

    @Override
    public void close() throws IOException {
        host.close();
    }
}
