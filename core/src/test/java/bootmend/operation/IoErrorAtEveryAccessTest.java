package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.FaultingDevice;
import bootmend.device.PartitionWindow;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A reset whose card answers with an I/O error at every read and at every write, then recovery on a healthy one. */
class IoErrorAtEveryAccessTest {

    private static final CardRequest CARD = CardRequest.of(Path.of("/cards/lab.img"));
    private static final int MOST = 10_000;
    /** A fixed time, so that every run writes the same bytes. */
    private static final Clock FIXED = Clock.fixed(Instant.parse("2026-02-03T10:11:12Z"), ZoneOffset.UTC);

    @ParameterizedTest
    @ValueSource(strings = {"FAT12", "FAT16", "FAT32"})
    void everyWriteThatFailsCanBeRecovered(String type) throws Exception {
        SparseDisk before = card(type);
        SparseDisk after = reset(before);
        int failed = 0;
        for (long n = 1; n < MOST; n++) {
            SparseDisk card = before.copy();
            long write = n;
            if (!failsAndRecovers(card, FaultingDevice.atWrite(card, write), before, after)) {
                break;
            }
            failed++;
        }
        assertThat(failed).isEqualTo(writes(before));
    }

    @ParameterizedTest
    @ValueSource(strings = {"FAT12", "FAT16", "FAT32"})
    void everyReadThatFailsCanBeRecovered(String type) throws Exception {
        SparseDisk before = card(type);
        SparseDisk after = reset(before);
        int failed = 0;
        for (long n = 1; n < MOST; n++) {
            SparseDisk card = before.copy();
            long read = n;
            if (!failsAndRecovers(card, FaultingDevice.atRead(card, read), before, after)) {
                break;
            }
            failed++;
        }
        assertThat(failed).isBetween(20, MOST - 1);
    }

    @Test
    void aCutChangeIsNoticedByShowAndStopsOtherChanges() throws Exception {
        SparseDisk card = card("FAT16");
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            assertThat(tryReset(workplace(host, FaultingDevice.atWrite(card, 3)))
                            .kind())
                    .isEqualTo(CardException.Kind.INTERRUPTED);

            assertThat(new ShowJob(workplace(host, card)).run(CARD).notes())
                    .anyMatch(note -> note.contains("was interrupted") && note.contains("finished or undone"));
            CardException refusal = tryReset(workplace(host, card));
            assertThat(refusal.kind()).isEqualTo(CardException.Kind.INTERRUPTED);
            assertThat(refusal).hasMessageContaining("waits for recovery");
        }
    }

    /** Whether the reset failed; where it did, recovery brings the card to one of its two whole states. */
    private static boolean failsAndRecovers(SparseDisk card, BlockDevice failing, SparseDisk before, SparseDisk after)
            throws CardException, IOException {
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            CardException failure = tryReset(workplace(host, failing));
            if (failure == null) {
                assertThat(card.differingSectors(after)).isEmpty();
                return false;
            }
            assertThat(new StepNames().remedy(failure)).isNotBlank();
            try (OpenRecovery recovery = new RecoverJob(workplace(host, card)).begin(CARD)) {
                if (recovery.view().isEmpty()) {
                    assertThat(card.differingSectors(before)).isEmpty();
                } else if (recovery.view().get().finishSuggested()) {
                    recovery.finish();
                    assertThat(card.differingSectors(after)).isEmpty();
                } else {
                    recovery.undo();
                    assertThat(card.differingSectors(before)).isEmpty();
                }
            }
            return true;
        }
    }

    private static CardException tryReset(Workplace workplace) throws IOException {
        try {
            TriedChange.make(workplace, CARD, ChangeRequest.ToStock.PLAIN);
            return null;
        } catch (CardException e) {
            return e;
        }
    }

    private static SparseDisk reset(SparseDisk before) throws IOException {
        SparseDisk card = before.copy();
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            assertThat(tryReset(workplace(host, card))).isNull();
        }
        return card;
    }

    private static int writes(SparseDisk before) throws CardException, IOException {
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            return TriedChange.of(workplace(host, before.copy()), CARD, ChangeRequest.ToStock.PLAIN)
                    .plan()
                    .sectorsWritten();
        }
    }

    private static Workplace workplace(FileSystem host, BlockDevice device) {
        // A window, because a job closes its card and the disk is looked at afterwards.
        CardOpener opener = (path, forChanging) -> CardSource.of(path, new PartitionWindow(device, 0, device.getSize()))
                .keyed("cid:1b534d");
        return new Workplace(host.getPath("/home"), FIXED, opener);
    }

    private static SparseDisk card(String type) throws IOException {
        FatSpec spec = (switch (type) {
                    case "FAT12" -> FatSpec.fat12(500);
                    case "FAT16" -> FatSpec.fat16(5000);
                    default -> FatSpec.fat32(65600);
                })
                .serial(77)
                .build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec)
                .file("start.elf", new byte[2000])
                .file("config.txt", "arm_freq=2000\nover_voltage=6\n".repeat(40).getBytes(StandardCharsets.US_ASCII))
                .writeTo(disk, 0);
        return disk;
    }
}
