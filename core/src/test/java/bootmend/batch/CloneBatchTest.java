package bootmend.batch;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.device.CardSource;
import bootmend.device.FaultingDevice;
import bootmend.device.system.FixedDisks;
import bootmend.device.system.LocalCards;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeOutcome;
import bootmend.operation.ChangeRequest;
import bootmend.operation.Made;
import bootmend.operation.OpenRecovery;
import bootmend.operation.RecoverJob;
import bootmend.operation.TriedChange;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cards written from one image, which all share their key, changed side by side on real files. */
class CloneBatchTest {

    private static final int CARDS = 40;

    @TempDir
    private Path folder;

    private byte[] before;
    private List<Path> cards;
    private Workplace workplace;
    private final List<CardResult<ChangeOutcome>> results = new ArrayList<>();

    @BeforeEach
    void clonedCards() throws CardException, IOException {
        SparseDisk disk = MemoryWorkplace.card("arm_freq=2100\nenable_uart=1\n");
        Path first = folder.resolve("00.img");
        disk.writeTo(first);
        before = Files.readAllBytes(first);
        cards = new ArrayList<>(List.of(first));
        for (int i = 1; i < CARDS; i++) {
            cards.add(Files.copy(first, folder.resolve(String.format("%02d.img", i))));
        }
        workplace = Workplace.ofThisComputer(folder.resolve("home"));
    }

    @Test
    void everyCloneIsDoneOnceWithARecordOfItsOwnThatTakesItBack() throws CardException, IOException {
        reset(workplace);

        assertThat(results)
                .allSatisfy(result -> assertThat(
                                result.view().orElseThrow().ifMade().orElseThrow() instanceof Made.OnCard)
                        .isTrue());
        assertThat(results.stream()
                        .map(result -> result.view()
                                .orElseThrow()
                                .ifMade()
                                .orElseThrow()
                                .record())
                        .distinct())
                .hasSize(CARDS);

        results.clear();
        reset(workplace);
        assertThat(results).allMatch(result -> result.view().orElseThrow() instanceof ChangeOutcome.NothingToDo);

        for (int i : new int[] {0, 17, CARDS - 1}) {
            {
                TriedChange back = TriedChange.of(workplace, CardRequest.of(cards.get(i)), ChangeRequest.Undo.LAST);
                back.apply();
            }
            assertThat(Files.readAllBytes(cards.get(i))).as("card %d", i).isEqualTo(before);
        }
        assertThat(Files.readAllBytes(cards.get(1))).isNotEqualTo(before);
    }

    @Test
    void clonesThatAreInterruptedAreEachRecoveredFromTheirOwnRecord() throws CardException, IOException {
        // Every third card takes two writes and no more.
        Workplace cutting = new Workplace(folder.resolve("home"), Clock.systemDefaultZone(), (path, forChanging) -> {
            CardSource whole = new LocalCards(FixedDisks.REFUSED).open(path, forChanging);
            boolean cut = forChanging && cards.indexOf(Path.of(path.text())) % 3 == 0;
            return cut
                    ? CardSource.of(path, FaultingDevice.atWrite(whole.device(), 3))
                            .keyed(whole.key())
                    : whole;
        });
        reset(cutting);

        for (int i = 0; i < CARDS; i++) {
            boolean cut = i % 3 == 0;
            assertThat(results.get(i).error().map(CardException::kind))
                    .as("card %d", i)
                    .isEqualTo(cut ? Optional.of(CardException.Kind.INTERRUPTED) : Optional.empty());
            if (cut) {
                try (OpenRecovery recovery = new RecoverJob(workplace).begin(CardRequest.of(cards.get(i)))) {
                    assertThat(recovery.view()).isPresent();
                    recovery.undo();
                }
                assertThat(Arrays.equals(Files.readAllBytes(cards.get(i)), before))
                        .as("card %d", i)
                        .isTrue();
            }
        }
    }

    private void reset(Workplace at) {
        ChangeOperation operation = new ChangeOperation(at);
        ChangeOrder order = ChangeOrder.of(ChangeRequest.ToStock.PLAIN);
        new CardBatch(4)
                .run(
                        cards,
                        card -> operation
                                .make(CardRequest.of(card), order, ChangeOperation.Approval.GIVEN)
                                .orThrow(),
                        results::add);
    }
}
