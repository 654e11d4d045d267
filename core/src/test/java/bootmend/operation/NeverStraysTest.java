package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.PartitionView;
import bootmend.device.CardSource;
import bootmend.device.DeviceEvent;
import bootmend.device.PartitionWindow;
import bootmend.device.RecordingDevice;
import bootmend.earlier.SearchProgress;
import bootmend.fat.SectorKind;
import bootmend.fixtures.DamagedCard;
import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.fixtures.Fat32LibCard;
import bootmend.fixtures.Fat32LibCards;
import bootmend.fixtures.SparseDisk;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.EarlierJob;
import bootmend.view.ShowJob;
import bootmend.workplace.Workplace;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every job on every fixture: nothing outside the boot partition is ever written, and a boot sector only by a repair
 * whose plan names one.
 */
class NeverStraysTest {

    private static final CardRequest CARD = CardRequest.of(Path.of("/cards/any.img"));

    @TestFactory
    List<DynamicTest> everyJobOnEveryFixture() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (DemoCard card : DemoCards.all()) {
            tests.add(test(card.fileName(), DemoCards.build(card)));
        }
        for (Fat32LibCard card : Fat32LibCards.all()) {
            tests.add(test("fat32-lib, " + card.kind(), card.disk()));
        }
        for (DamagedCard card : DamagedCards.all()) {
            tests.add(test(card.id(), card.disk().copy()));
        }
        return tests;
    }

    private static DynamicTest test(String name, SparseDisk disk) {
        return DynamicTest.dynamicTest(name, () -> {
            try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
                new Run(host, disk).everyJob();
            }
        });
    }

    /** One card that every job is run on, each with its writes recorded. */
    private static final class Run {

        private final FileSystem host;
        private final SparseDisk disk;
        private RecordingDevice recorded;

        Run(FileSystem host, SparseDisk disk) {
            this.host = host;
            this.disk = disk;
        }

        void everyJob() throws CardException, IOException {
            run(workplace -> {
                new ShowJob(workplace).run(CARD);
                new HistoryJob(workplace).run(CARD);
                new EarlierJob(workplace).run(CARD, BoardRequest.none(), SearchProgress.TO_THE_END);
                return null;
            });
            assertThat(recorded.writes()).as("looking writes nothing").isEmpty();
            run(workplace -> TriedChange.of(workplace, CARD, ChangeRequest.ToStock.PLAIN));
            run(workplace ->
                    TriedChange.of(workplace, CARD, inPlace(new ChangeRequest.ToEarlier("1", true, Optional.empty()))));
            run(workplace -> TriedChange.of(workplace, CARD, ChangeRequest.Undo.LAST));
            run(workplace -> TriedChange.of(workplace, CARD, new ChangeRequest.Repair(true)));
            run(workplace -> TriedChange.of(workplace, CARD, inPlace(new ChangeRequest.ToStock(true, Set.of()))));
            run(workplace -> {
                new RecoverJob(workplace).begin(CARD).close();
                return null;
            });
            run(workplace -> TriedChange.of(workplace, CARD, inPlace(ChangeRequest.Undo.to(0))));
        }

        private interface Job {
            TriedChange begin(Workplace workplace) throws CardException, IOException;
        }

        private void run(Job job) throws IOException {
            recorded = new RecordingDevice(disk);
            Workplace workplace = new Workplace(
                    host.getPath("/home"),
                    Clock.systemUTC(),
                    (path, forChanging) -> CardSource.of(path, new PartitionWindow(recorded, 0, recorded.getSize()))
                            .keyed("cid:1b534d"));
            try {
                TriedChange change = job.begin(workplace);
                if (change != null && !change.isNothing()) {
                    change.apply();
                    check(change);
                }
            } catch (CardException e) {
                assertThat(recorded.writes())
                        .as("a refused job writes nothing: " + e.getMessage())
                        .isEmpty();
            }
        }

        private static ChangeOrder inPlace(ChangeRequest request) {
            return ChangeOrder.of(request).accepting(NextStep.Allow.IN_PLACE);
        }

        private void check(TriedChange change) {
            PartitionView partition = change.card().partition();
            long start = partition.firstSector() * partition.sectorBytes();
            boolean bootSectorNamed = change.plan().sectorsByKind().containsKey(SectorKind.BOOT_SECTOR.words());
            for (DeviceEvent.Write write : recorded.writes()) {
                assertThat(write.offset()).as("inside the boot partition").isGreaterThanOrEqualTo(start);
                assertThat(write.offset() + write.bytes().length).isLessThanOrEqualTo(start + partition.bytes());
                if (write.offset() == start) {
                    assertThat(bootSectorNamed)
                            .as("a boot sector only where the plan names one")
                            .isTrue();
                }
            }
            assertThat(recorded.writes()).hasSize(change.plan().sectorsWritten());
        }
    }
}
