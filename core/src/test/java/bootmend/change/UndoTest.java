package bootmend.change;

import static bootmend.change.PlannedCard.NEW;
import static bootmend.change.PlannedCard.OLD;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.RecordingDevice;
import bootmend.fat.FatVolume;
import bootmend.fat.SectorKind;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class UndoTest {

    private static final byte[] SHORTER = Arrays.copyOf(NEW, 300);

    private final UndoStore store =
            new UndoStore(Jimfs.newFileSystem(Configuration.unix()).getPath("/lab/data"));
    private final Committer committer = new Committer(store, PlannedCard.CLOCK);

    @ParameterizedTest
    @MethodSource("bootmend.change.PlannedCard#specs")
    void theWholeDiskIsAsItWas(FatSpec spec) throws CardException, IOException {
        for (byte[] after : new byte[][] {NEW, SHORTER, {}, PlannedCard.noise(9000)}) {
            PlannedCard card = PlannedCard.of(spec, builder -> builder);
            SparseDisk before = card.disk().copy();
            committer.commit(card.target(card.disk()), card.plan(OLD, after));
            assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(after);
            SparseDisk changed = card.disk().copy();

            undo(card);

            assertThat(card.disk().differingSectors(before)).isEmpty();
            assertThat(changed.differingSectors(before)).isNotEmpty();
            assertThat(last(card, card.disk())).as("nothing is left to undo").isEmpty();
        }
    }

    @Test
    void twoFilesInOnePlan() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat32(66000).build(), builder -> builder);
        SparseDisk before = card.disk().copy();
        ChangePlanner planner = card.planner(false);
        FatVolume volume = card.open(card.disk());
        planner.replace("config.txt", volume.find("config.txt").orElseThrow(), OLD, NEW);
        planner.replace("extra.txt", volume.find("extra.txt").orElseThrow(), OLD, SHORTER);
        committer.commit(card.target(card.disk()), planner.plan("two"));
        assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(NEW);
        assertThat(card.read(card.disk(), "extra.txt").bytes()).isEqualTo(SHORTER);

        undo(card);

        assertThat(card.disk().differingSectors(before)).isEmpty();
    }

    @Test
    void aFileWrittenInPlace() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder.fillUpTo(0));
        SparseDisk before = card.disk().copy();
        committer.commit(card.target(card.disk()), card.plan(OLD, SHORTER, true));

        assertThatThrownBy(() -> undo(card))
                .isInstanceOfSatisfying(
                        CardException.class,
                        e -> assertThat(e.isRefusedFor(NextStep.Allow.IN_PLACE)).isTrue());
        undo(card, true);

        assertThat(card.disk().differingSectors(before)).isEmpty();
    }

    @Test
    void oneChangeAfterTheOtherNewestFirst() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat32(66000).build(), builder -> builder);
        SparseDisk first = card.disk().copy();
        committer.commit(card.target(card.disk()), card.plan(OLD, NEW));
        SparseDisk second = card.disk().copy();
        committer.commit(card.target(card.disk()), card.plan(NEW, SHORTER));

        undo(card);
        assertThat(card.disk().differingSectors(second)).isEmpty();
        undo(card);
        assertThat(card.disk().differingSectors(first)).isEmpty();
    }

    /** The old clusters were released, so what another system put there must not be overwritten. */
    @Test
    void theOldPlaceIsTakenByAnotherFile() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        int[] oldChain = card.layout().chain("config.txt");
        committer.commit(card.target(card.disk()), card.plan(OLD, NEW));
        byte[] foreign = PlannedCard.noise(512);
        card.layout().setFatEntries(card.disk(), oldChain[0], 0xFFFF);
        card.disk().patch(card.layout().clusterOffset(oldChain[0]), foreign);

        RecordingDevice device = undo(card);

        assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(OLD);
        assertThat(card.disk().toBytes(card.layout().clusterOffset(oldChain[0]), 512))
                .isEqualTo(foreign);
        assertThat(card.disk().toBytes(card.layout().fatEntryOffset(0, oldChain[0]), 2))
                .containsExactly(-1, -1);
        assertThat(device.writes()).isNotEmpty();
    }

    /** Data alone was overwritten, the table not: sector by sector would bring back a file of foreign bytes. */
    @Test
    void theOldDataIsGoneButItsPlaceIsFree() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        int[] oldChain = card.layout().chain("config.txt");
        committer.commit(card.target(card.disk()), card.plan(OLD, NEW));
        card.disk().patch(card.layout().clusterOffset(oldChain[0]), PlannedCard.noise(512));

        undo(card);

        assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(OLD);
    }

    @Test
    void aFileThatWasEditedSinceIsLeftAlone() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        Plan plan = card.plan(OLD, NEW);
        committer.commit(card.target(card.disk()), plan);
        long data = plan.steps().get(0).changes().stream()
                .filter(c -> c.kind() == SectorKind.DATA)
                .findFirst()
                .orElseThrow()
                .offset();
        card.disk().patch(data, PlannedCard.text("edited"));

        assertThat(last(card, card.disk())).isEmpty();
    }

    private RecordingDevice undo(PlannedCard card) throws CardException, IOException {
        return undo(card, false);
    }

    private RecordingDevice undo(PlannedCard card, boolean inPlace) throws CardException, IOException {
        RecordingDevice device = new RecordingDevice(card.disk());
        Target target = card.target(device);
        UndoRecord record = last(card, device).orElseThrow();
        Plan back = new UndoPlanner(target).plan(record, LocalDateTime.now(PlannedCard.CLOCK), inPlace);
        committer.undo(target, back, record);
        return device;
    }

    private Optional<UndoRecord> last(PlannedCard card, BlockDevice device) throws CardException, IOException {
        return History.of(card.target(device), store).lastToUndo();
    }
}
