package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.device.CardSource;
import bootmend.device.FaultingDevice;
import bootmend.device.PartitionWindow;
import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A repair whose card fails at every write, then finished and undone. */
class RepairCutTest {

    private static final CardRequest CARD = CardRequest.of(Path.of("/cards/lab.img"));
    private static final Clock FIXED = Clock.fixed(Instant.parse("2026-02-03T10:11:12Z"), ZoneOffset.UTC);
    private static final int MOST = 100;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "boot-sector-zeroed",
                "fat-both-copies-hurt",
                "chain-into-free",
                "dirty-bits-fat32",
                "config-utf16",
                "orphaned-long-names",
                "chain-loop-on-itself"
            })
    void everyCutRepairIsFinishedOrTakenBack(String id) throws CardException, IOException {
        SparseDisk damaged = DamagedCards.card(id).disk();
        SparseDisk repaired = damaged.copy();
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            assertThat(fails(host, repaired)).isFalse();
        }
        int cuts = 0;
        for (int write = 1; write < MOST; write++) {
            SparseDisk finished = damaged.copy();
            if (!cutAndRecover(finished, write, true)) {
                break;
            }
            assertThat(finished.differingSectors(write == 1 ? damaged : repaired))
                    .as("finished after a cut at write %s, of which the first leaves nothing to finish", write)
                    .isEmpty();
            SparseDisk undone = damaged.copy();
            cutAndRecover(undone, write, false);
            assertThat(undone.differingSectors(damaged))
                    .as("undone after a cut at write %s", write)
                    .isEmpty();
            cuts++;
        }
        assertThat(cuts).isPositive();
    }

    private static boolean cutAndRecover(SparseDisk card, int write, boolean finish) throws CardException, IOException {
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            if (!fails(host, FaultingDevice.atWrite(card, write))) {
                return false;
            }
            try (OpenRecovery recovery = new RecoverJob(workplace(host, card)).begin(CARD)) {
                assertThat(recovery.view()).isPresent();
                if (finish && write == 1) {
                    assertThat(recovery.view().orElseThrow().nothingWritten()).isTrue();
                    assertThatThrownBy(recovery::finish)
                            .isInstanceOfSatisfying(
                                    CardException.class,
                                    e -> assertThat(e.kind()).isEqualTo(CardException.Kind.REFUSED));
                } else if (finish) {
                    recovery.finish();
                } else {
                    recovery.undo();
                }
            }
            return true;
        }
    }

    private static boolean fails(FileSystem host, BlockDevice device) throws IOException {
        try {
            TriedChange.make(workplace(host, device), CARD, new ChangeRequest.Repair(true));
            return false;
        } catch (CardException e) {
            assertThat(e.kind()).isEqualTo(CardException.Kind.INTERRUPTED);
            return true;
        }
    }

    private static Workplace workplace(FileSystem host, BlockDevice device) {
        return new Workplace(
                host.getPath("/home"),
                FIXED,
                (path, forChanging) -> CardSource.of(path, new PartitionWindow(device, 0, device.getSize()))
                        .keyed("cid:1b534d"));
    }
}
