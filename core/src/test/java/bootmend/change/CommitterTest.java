package bootmend.change;

import static bootmend.change.PlannedCard.NEW;
import static bootmend.change.PlannedCard.OLD;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.device.DeviceEvent;
import bootmend.device.RecordingDevice;
import bootmend.fat.FatVolume;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommitterTest {

    private final Path home = Jimfs.newFileSystem(Configuration.unix()).getPath("/lab/data");
    private final UndoStore store = new UndoStore(home);
    private final Committer committer = new Committer(store, PlannedCard.CLOCK);

    @ParameterizedTest
    @MethodSource("bootmend.change.PlannedCard#specs")
    void writesThePlansSectorsInItsOrderWithAForceAfterEachStep(FatSpec spec) throws CardException, IOException {
        PlannedCard card = PlannedCard.of(spec, builder -> builder);
        Plan plan = card.plan(OLD, NEW);
        var others = card.otherFiles(card.disk());
        RecordingDevice device = new RecordingDevice(card.disk());

        Committed.Recorded done = committer.commit(card.target(device), plan);

        assertThat(plan.steps())
                .extracting(PlanStep::kind)
                .containsExactly(PlanStep.Kind.PREPARE, PlanStep.Kind.COMMIT, PlanStep.Kind.CLEAN_UP);
        assertThat(plan.steps().get(1).changes()).hasSize(1);
        assertThat(changes(device.events())).usingRecursiveComparison().isEqualTo(expected(plan));
        assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(NEW);
        assertThat(card.read(card.disk(), "config.txt").isWhole()).isTrue();
        assertThat(card.otherFiles(card.disk())).isEqualTo(others);
        assertThat(agrees(done))
                .isEqualTo(spec.bytesPerSector() == 512 && spec.activeFat() < 0 && spec.upperBits() == 0);
        assertThat(store.openFor(card.id())).isEmpty();
        assertThat(store.doneFor(card.id()))
                .singleElement()
                .matches(record -> record.plan().writesTheSameAs(plan) && Files.exists(record.file()));
    }

    @Test
    void theUndoRecordIsThereBeforeTheFirstWrite() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        Plan plan = card.plan(OLD, NEW);
        AtomicInteger looks = new AtomicInteger();

        committer.commit(
                card.target(new WatchedDevice(card.disk(), (number, offset) -> {
                    assertThat(open(card))
                            .singleElement()
                            .matches(record -> record.plan().writesTheSameAs(plan));
                    return looks.incrementAndGet() > 0;
                })),
                plan);

        assertThat(looks).hasValue(plan.sectorsWritten());
    }

    @Test
    void noRecordNoWrite() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        Files.createDirectories(home.getParent());
        Files.writeString(home, "a file stands where the folder should be");
        RecordingDevice device = new RecordingDevice(card.disk());
        Plan plan = card.plan(OLD, NEW);

        assertStops(() -> committer.commit(card.target(device), plan), CardException.Kind.REFUSED, "undo record");
        assertThat(device.writes()).isEmpty();
    }

    /** Writes 0 and 1 are sectors of the table, which the last step writes again, whole. */
    @ParameterizedTest
    @ValueSource(ints = {2, 4, 5, 6, 7})
    void aWriteThatDoesNotLandLeavesTheRecordOpen(int lost) throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        Plan plan = card.plan(OLD, NEW);
        assertThat(plan.sectorsWritten()).isGreaterThan(lost);

        assertStops(
                () -> committer.commit(
                        card.target(new WatchedDevice(card.disk(), (number, offset) -> number != lost)), plan),
                CardException.Kind.INTERRUPTED,
                "does not read back");

        assertThat(store.openFor(card.id())).hasSize(1);
        assertThat(store.doneFor(card.id())).isEmpty();
    }

    @Test
    void aDeviceThatFailsLeavesTheRecordOpen() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        Plan plan = card.plan(OLD, NEW);

        assertStops(
                () -> committer.commit(
                        card.target(new WatchedDevice(card.disk(), (number, offset) -> {
                            if (number == 3) {
                                throw new IOException("the reader was unplugged");
                            }
                            return true;
                        })),
                        plan),
                CardException.Kind.INTERRUPTED,
                "unplugged");

        assertThat(store.openFor(card.id())).hasSize(1);
        assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(OLD);
    }

    @Test
    void aCardThatChangedSinceThePlanIsNotWritten() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat32(66000).build(), builder -> builder);
        Plan plan = card.plan(OLD, NEW);
        for (long offset : plan.contentBefore().keySet()) {
            SparseDisk changed = card.disk().copy();
            changed.patch(offset + 77, (byte) ~changed.toBytes(offset + 77, 1)[0]);
            RecordingDevice device = new RecordingDevice(changed);

            assertStops(() -> committer.commit(card.target(device), plan), CardException.Kind.REFUSED, "changed since");
            assertThat(device.writes()).isEmpty();
        }
        assertThat(home).doesNotExist();
    }

    @Test
    void nothingToDoIsNoPlanAndCannotBeCommitted() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        Plan plan = card.plan(OLD, OLD.clone());

        assertThat(plan.isEmpty()).isTrue();
        assertThatThrownBy(() -> committer.commit(card.target(card.disk()), plan))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(home).doesNotExist();
    }

    /** The second reader follows a looping chain for ever, even where the end mark stands before the loop. */
    @Test
    @Timeout(value = 20, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void aFolderChainThatLoopsBehindItsEndMarkDoesNotHoldTheSecondReader() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat32(66000).build(), builder -> builder.rootAt(60000, 60001, 60002));
        card.layout().setFatEntries(card.disk(), 60002, 60001);

        Committed.Recorded done = committer.commit(card.target(card.disk()), card.plan(OLD, NEW));

        assertThat(agrees(done)).isFalse();
        assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(NEW);
    }

    @Test
    @Timeout(value = 20, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void aSubfolderChainThatLoopsDoesNotEither() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(
                FatSpec.fat16(5000).build(), builder -> builder.directory("lab").file("lab/more.txt", OLD));
        int[] chain = card.layout().chain("lab");
        card.layout().setFatEntries(card.disk(), chain[0], chain[0]);
        FatVolume volume = card.open(card.disk());
        ChangePlanner planner = card.planner(false);
        planner.replace("lab/more.txt", volume.find("lab/more.txt").orElseThrow(), OLD, NEW);

        assertThat(agrees(committer.commit(card.target(card.disk()), planner.plan("test"))))
                .isFalse();
        assertThat(card.read(card.disk(), "lab/more.txt").bytes()).isEqualTo(NEW);
    }

    /** The second reader takes reserved bits for a part of the number: it then has nothing to say. */
    @Test
    @Timeout(value = 20, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void reservedBitsInTheNewChainDoNotStopTheChange() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat32(66000).build(), builder -> builder);
        for (int cluster = 2; cluster < 200; cluster++) {
            long at = card.layout().fatEntryOffset(0, cluster) + 3;
            if (card.disk().toBytes(at, 1)[0] == 0) {
                card.disk().patch(at, (byte) 0x30);
                card.disk().patch(card.layout().fatEntryOffset(1, cluster) + 3, (byte) 0x30);
            }
        }

        assertThat(agrees(committer.commit(card.target(card.disk()), card.plan(OLD, NEW))))
                .isFalse();
        assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(NEW);
    }

    private static boolean agrees(Committed.Recorded done) {
        assertThat(done.nameKept()).isTrue();
        return done instanceof Committed.ToSectors sectors && sectors.secondReaderAgrees();
    }

    private static List<DeviceEvent> changes(List<DeviceEvent> events) {
        return events.stream()
                .filter(event -> !(event instanceof DeviceEvent.Read))
                .toList();
    }

    private static List<DeviceEvent> expected(Plan plan) {
        List<DeviceEvent> events = new ArrayList<>();
        for (PlanStep step : plan.steps()) {
            step.changes().forEach(change -> events.add(new DeviceEvent.Write(change.offset(), change.after())));
            events.add(new DeviceEvent.Force());
        }
        return events;
    }

    private static void assertStops(ThrowingCallable work, CardException.Kind kind, String words) {
        assertThatThrownBy(work).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(kind);
            assertThat(e).hasMessageContaining(words);
            assertThat(new StepNames().remedy(e)).endsWith(".");
        });
    }

    private List<UndoRecord> open(PlannedCard card) throws IOException {
        try {
            return store.openFor(card.id());
        } catch (CardException e) {
            throw new AssertionError(e);
        }
    }
}
