package bootmend.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.device.DeviceEvent;
import bootmend.device.PartitionWindow;
import bootmend.device.RecordingDevice;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fixtures.SparseDisk;
import bootmend.oracle.Fsck;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A change cut at every point of it: before recovery the config file reads old or new, whole, and every other file as it
 * was; recovery makes the whole card byte-exact, old or new as asked, even when it is itself cut at every point.
 */
class CutAtEveryPointTest {

    /** A card that the system tells from every other, so that a record belongs to it even with nothing written. */
    private static final Medium MEDIUM = new Medium("/cards/lab", "cid:1b534d303030303010");

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-02-03T10:11:12Z"), ZoneOffset.UTC);
    private static int tried;
    private static int scenariosTried;

    static List<CutScenario> scenarios() throws IOException {
        return CutScenario.all();
    }

    static List<CutScenario> clean() throws IOException {
        return CutScenario.clean();
    }

    @AfterAll
    static void printCount() throws IOException {
        System.out.println("cut points tried: " + tried);
        if (scenariosTried == scenarios().size()) {
            assertThat(tried).isGreaterThanOrEqualTo(20_000);
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void theFileStaysWholeAndRecoveryIsExact(CutScenario scenario) throws CardException, Exception {
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            Run run = new Run(scenario, host.getPath("/home"));
            tried += new CutPoints(scenario.disk(), run.recorded.events()).visit(checked(run::check));
            tried += run.cutRecoveries();
            scenariosTried++;
        }
    }

    /** Recovery ends in one of these two states exactly, so what holds for them holds for every recovered card. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("clean")
    void bothWholeStatesAreCleanForFsck(CutScenario scenario, @TempDir Path folder) throws Exception {
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            Run run = new Run(scenario, host.getPath("/home"));
            assertThat(Fsck.complaints(scenario.disk(), scenario.layout(), folder))
                    .as("before")
                    .isEmpty();
            assertThat(Fsck.complaints(run.after, scenario.layout(), folder))
                    .as("after")
                    .isEmpty();
        }
    }

    /** What is done with a cut card. */
    private interface Check {
        void on(SparseDisk state) throws CardException, IOException;
    }

    private static Consumer<SparseDisk> checked(Check check) {
        return state -> {
            try {
                check.on(state);
            } catch (CardException e) {
                throw new AssertionError(e);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        };
    }

    /** One change, made once whole; then every cut state is held against it. */
    private static final class Run {

        private final CutScenario scenario;
        private final SparseDisk after;
        private final RecordingDevice recorded;
        private final Path openRecord;
        private final byte[] record;
        private final UndoStore store;
        private final CardId id;

        Run(CutScenario scenario, Path home) throws CardException, IOException {
            this.scenario = scenario;
            this.after = scenario.disk().copy();
            this.recorded = new RecordingDevice(after);
            this.store = new UndoStore(home);
            FatVolume volume = FatVolume.open(after);
            this.id = CardId.of(volume, 0);
            ChangePlanner planner = new ChangePlanner(volume, id, LocalDateTime.now(CLOCK), false);
            planner.put(scenario.change());
            Plan plan = planner.plan("cut me");
            assertThat(plan.steps()).hasSizeGreaterThan(scenario.name().contains("must grow") ? 4 : 0);
            Committed.Recorded done = new Committer(store, CLOCK).commit(target(recorded), plan);
            assertThat(((Committed.ToSectors) done).secondReaderAgrees())
                    .isEqualTo(volume.geometry().bytesPerSector() == 512
                            && scenario.change().after() != null);
            this.record = Files.readAllBytes(done.record().file());
            this.openRecord = home.resolve("open")
                    .resolve(id.key() + "_" + done.record().file().getFileName());
            Files.delete(done.record().file());
        }

        void check(SparseDisk state) throws CardException, IOException {
            FatVolume volume = FatVolume.open(state);
            FileChange change = scenario.change();
            byte[] now = read(volume, change.path());
            boolean isNew = Arrays.equals(now, change.after());
            assertThat(isNew || Arrays.equals(now, change.before()))
                    .as("old or new, whole")
                    .isTrue();
            for (Map.Entry<String, byte[]> other : scenario.others().entrySet()) {
                assertThat(read(volume, other.getKey())).as(other.getKey()).isEqualTo(other.getValue());
            }
            if (now != null) {
                assertThat(SecondReader.ask(state, volume, change.path(), now))
                        .isNotEqualTo(SecondReader.Answer.DISAGREES);
            }

            SparseDisk finished = state.copy();
            OpenChange open = waiting(finished);
            assertThat(open.isBegun())
                    .as("begun where anything stands on the card")
                    .isEqualTo(!state.differingSectors(scenario.disk()).isEmpty());
            if (open.isBegun()) {
                forget(recovery(finished).finish(open));
                assertThat(finished.differingSectors(after)).as("finished").isEmpty();
            } else {
                assertThatThrownBy(() -> recovery(finished).finish(open)).isInstanceOf(CardException.class);
                assertThat(finished.differingSectors(scenario.disk())).isEmpty();
            }

            forget(recovery(state).undo(waiting(state)));
            assertThat(state.differingSectors(scenario.disk())).as("undone").isEmpty();
        }

        /** Cuts the change halfway, then cuts each way of recovering from that at every point. */
        int cutRecoveries() throws CardException, IOException {
            List<DeviceEvent.Write> writes = recorded.writes();
            int count = 0;
            for (int done : List.of(Math.max(1, writes.size() / 3), Math.max(1, 2 * writes.size() / 3))) {
                SparseDisk halfway = scenario.disk().copy();
                writes.subList(0, done).forEach(write -> halfway.patch(write.offset(), write.bytes()));
                RecordingDevice finishing = new RecordingDevice(halfway.copy());
                forget(recovery(finishing).finish(waiting(finishing)));
                count += new CutPoints(halfway, finishing.events()).visit(checked(this::check));
                RecordingDevice takingBack = new RecordingDevice(halfway.copy());
                forget(recovery(takingBack).undo(waiting(takingBack)));
                count += new CutPoints(halfway, takingBack.events()).visit(checked(this::check));
            }
            return count;
        }

        private static void forget(Recovered recovered) throws IOException {
            Files.delete(recovered.record().file());
        }

        private OpenChange waiting(BlockDevice card) throws CardException, IOException {
            Files.write(openRecord, record);
            return recovery(card).find().orElseThrow();
        }

        private Recovery recovery(BlockDevice card) throws IOException {
            return new Recovery(target(card), store);
        }

        private Target target(BlockDevice card) throws IOException {
            return Target.ofCard(
                    card, new PartitionWindow(card, 0, scenario.disk().getSize()), id, MEDIUM, () -> true);
        }

        private static byte[] read(FatVolume volume, String path) throws IOException {
            Optional<DirectoryEntry> entry = volume.find(path);
            return entry.isEmpty() ? null : volume.read(entry.get(), 1 << 20).bytes();
        }
    }
}
