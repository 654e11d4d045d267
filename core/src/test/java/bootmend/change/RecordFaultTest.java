package bootmend.change;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.change.MemoryRecords.Failure;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every access to the undo records fails, once or from then on as on a full disk, while a card is changed. */
class RecordFaultTest {

    private static final Path HOME = Path.of("/home");
    private static final Medium MEDIUM = new Medium("/dev/card", "cid:1b");
    private static final LocalDateTime NOW = LocalDateTime.of(2026, 2, 3, 10, 11, 12);
    private static final int MOST = 100;

    /** One thing that is done with a card and its records. */
    private interface Work {
        void run(SmallCard card, UndoStore store) throws CardException, IOException;
    }

    private static void reset(SmallCard card, UndoStore store) throws CardException, IOException {
        new Committer(store, PlannedCard.CLOCK).commit(card.target(MEDIUM), card.reset(NOW));
    }

    private static void undo(SmallCard card, UndoStore store) throws CardException, IOException {
        Target target = card.target(MEDIUM);
        UndoRecord last = History.of(target, store).lastToUndo().orElseThrow();
        new Committer(store, PlannedCard.CLOCK).undo(target, new UndoPlanner(target).plan(last, NOW, false), last);
    }

    @ParameterizedTest
    @CsvSource({"BEFORE,false", "BEFORE,true", "HALFWAY,false", "HALFWAY,true", "AFTER,false", "AFTER,true"})
    void aChangeWhoseRecordFails(Failure how, boolean forEver) throws CardException, IOException {
        MemoryRecords none = new MemoryRecords();
        everyFailure(none, RecordFaultTest::reset, SmallCard.of(7, SmallCard.OLD), how, forEver);
    }

    @ParameterizedTest
    @CsvSource({"BEFORE,false", "BEFORE,true", "HALFWAY,false", "HALFWAY,true", "AFTER,false", "AFTER,true"})
    void anUndoWhoseRecordFails(Failure how, boolean forEver) throws CardException, IOException {
        MemoryRecords one = new MemoryRecords();
        SmallCard card = SmallCard.of(7, SmallCard.OLD);
        reset(card, new UndoStore(HOME, one));
        everyFailure(one, RecordFaultTest::undo, card, how, forEver);
    }

    /** Recovery of a change that was cut after two writes, finished and undone. */
    @ParameterizedTest
    @CsvSource({"BEFORE,false", "BEFORE,true", "AFTER,false", "AFTER,true"})
    void aRecoveryWhoseRecordFails(Failure how, boolean forEver) throws CardException, IOException {
        MemoryRecords records = new MemoryRecords();
        SmallCard card = SmallCard.of(7, SmallCard.OLD);
        card.failAfter(2);
        assertThat(kindOf(() -> reset(card, new UndoStore(HOME, records)))).contains(CardException.Kind.INTERRUPTED);
        SmallCard cut = new SmallCard(card.bytes());
        everyFailure(records, (c, store) -> recover(c, store, true), cut, how, forEver);
        everyFailure(records, (c, store) -> recover(c, store, false), cut, how, forEver);
    }

    private static void recover(SmallCard card, UndoStore store, boolean finish) throws CardException, IOException {
        Recovery recovery = new Recovery(card.target(MEDIUM), store);
        Optional<OpenChange> open = recovery.find();
        if (open.isPresent() && finish && open.get().isBegun()) {
            recovery.finish(open.get());
        } else if (open.isPresent()) {
            recovery.undo(open.get());
        }
    }

    private static void everyFailure(MemoryRecords start, Work work, SmallCard card, Failure how, boolean forEver)
            throws CardException, IOException {
        byte[] before = card.bytes();
        SmallCard whole = new SmallCard(before);
        work.run(whole, new UndoStore(HOME, new MemoryRecords(start.files())));
        int failed = 0;
        for (int access = 1; access < MOST; access++) {
            MemoryRecords records = new MemoryRecords(start.files());
            SmallCard tried = new SmallCard(before);
            records.failAt(access, how, forEver);
            Optional<CardException.Kind> kind = kindOf(() -> work.run(tried, new UndoStore(HOME, records)));
            records.heal();
            if (kind.isEmpty() && records.accesses() < access) {
                assertThat(tried.bytes()).isEqualTo(whole.bytes());
                break;
            }
            failed++;
            String at = "access " + access + " " + how + ": " + kind;
            if (!kind.equals(Optional.of(CardException.Kind.INTERRUPTED)) && kind.isPresent()) {
                assertThat(tried.bytes()).as("%s: nothing was written", at).isEqualTo(before);
            } else {
                assertThat(tried.bytes()).as(at).isEqualTo(whole.bytes());
            }
            // Whatever is left open belongs to this card and can be put away without another write to it.
            SmallCard later = new SmallCard(tried.bytes());
            UndoStore store = new UndoStore(HOME, records);
            Optional<OpenChange> open = new Recovery(later.target(MEDIUM), store).find();
            if (open.isPresent() && Arrays.equals(tried.bytes(), whole.bytes())) {
                later.failAfter(0);
                recover(later, store, true);
            } else {
                recover(later, store, false);
            }
            assertThat(store.open()).as(at).isEmpty();
            assertThat(later.config()).isIn(SmallCard.OLD, SmallCard.NEW);
        }
        assertThat(failed).isBetween(2, MOST - 2);
    }

    /** What the work failed with; anything but an error of its own fails the test. */
    private static Optional<CardException.Kind> kindOf(ThrowingWork work) throws IOException {
        try {
            work.run();
            return Optional.empty();
        } catch (CardException e) {
            assertThat(e.remedy()).isNotBlank();
            return Optional.of(e.kind());
        } catch (IOException e) {
            // Before a change is begun, its card's records are read; a front end words that failure.
            return Optional.of(CardException.Kind.UNREADABLE);
        }
    }

    private interface ThrowingWork {
        void run() throws CardException, IOException;
    }

    @Test
    void aStoreThatTakesNothingAllowsNoWrite() throws CardException, IOException {
        MemoryRecords full = new MemoryRecords();
        full.failAt(1, Failure.BEFORE, true);
        SmallCard card = SmallCard.of(7, SmallCard.OLD);
        card.failAfter(0);

        assertThat(kindOf(() -> reset(card, new UndoStore(HOME, full)))).contains(CardException.Kind.REFUSED);
        assertThat(full.files()).isEmpty();
    }
}
