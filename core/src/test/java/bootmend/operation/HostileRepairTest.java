package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.card.PartitionView;
import bootmend.device.CardSource;
import bootmend.device.DeviceEvent;
import bootmend.device.RecordingDevice;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.tuning.TuningTables;
import bootmend.workplace.Workplace;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Cards with random damage through repair: it comes to an end in a bounded number of accesses, throws nothing but its
 * own error, writes nothing that it did not plan, repairs what it says it repairs, and is undone to the byte.
 *
 * <p>The system property {@code bootmend.hostile.repairs} asks for more cases. A case that fails names its seed.
 */
class HostileRepairTest {

    private static final long CASES = Long.getLong("bootmend.hostile.repairs", 400);
    private static final CardRequest CARD = CardRequest.of(Path.of("/cards/hostile.img"));
    private static final ChangeRequest.Repair FREE_LOST = new ChangeRequest.Repair(true);
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-02-03T10:11:12Z"), ZoneOffset.UTC);
    /** Ten full looks, each at every FAT sector of the largest base card for each of four candidates. */
    private static final long MOST_ACCESSES = 100_000;

    private static final int MOST_BYTES = 1 << 20;

    private final TuningTables tables = TuningTables.load();
    private int repaired;

    @Test
    void everyDamageIsSurvived() throws CardException {
        List<HostileCards.Base> bases = HostileCards.bases();
        for (long seed = 1; seed <= CASES; seed++) {
            HostileCards.Base base = bases.get(Math.floorMod(seed, bases.size()));
            SparseDisk card = Mutation.of(base.disk(), base.regions(), seed);
            try {
                survives(card);
            } catch (IOException | RuntimeException | Error e) {
                throw new AssertionError("seed " + seed + ": " + e, e);
            }
        }
        System.out.println("hostile repairs tried: " + CASES + "; repaired: " + repaired);
        assertThat(repaired).isGreaterThan((int) (CASES / 10));
    }

    private void survives(SparseDisk card) throws CardException, IOException {
        SparseDisk before = card.copy();
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            if (!repair(host, card)) {
                assertThat(card.differingSectors(before)).isEmpty();
                return;
            }
            repaired++;
            {
                TriedChange again = TriedChange.of(workplace(host, new RecordingDevice(card)), CARD, FREE_LOST);
                assertThat(again.isNothing())
                        .as("a second repair: %s", again.findings())
                        .isTrue();
            }
            {
                TriedChange undo =
                        TriedChange.of(workplace(host, new RecordingDevice(card)), CARD, ChangeRequest.Undo.LAST);
                undo.apply();
            }
            assertThat(card.differingSectors(before)).isEmpty();
        }
    }

    private boolean repair(FileSystem host, SparseDisk card) throws IOException {
        RecordingDevice recorded = new RecordingDevice(card);
        try {
            TriedChange change = TriedChange.of(workplace(host, recorded), CARD, FREE_LOST);
            if (change.isNothing()) {
                return false;
            }
            change.apply();
            PartitionView partition = change.card().partition();
            long start = partition.firstSector() * partition.sectorBytes();
            assertThat(recorded.writes()).hasSize(change.plan().sectorsWritten());
            for (DeviceEvent.Write write : recorded.writes()) {
                assertThat(write.offset()).isBetween(start, start + partition.bytes() - write.bytes().length);
            }
            return true;
        } catch (CardException e) {
            assertThat(new StepNames().remedy(e)).isNotBlank();
            assertThat(e.kind()).isNotEqualTo(CardException.Kind.INTERRUPTED);
            return false;
        }
    }

    private Workplace workplace(FileSystem host, RecordingDevice device) {
        return new Workplace(
                host.getPath("/home"),
                CLOCK,
                (path, forChanging) -> CardSource.of(path, new LimitedDevice(device, MOST_ACCESSES, MOST_BYTES))
                        .keyed("cid:1b534d"),
                tables);
    }
}
