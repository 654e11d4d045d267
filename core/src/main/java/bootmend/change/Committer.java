package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.OverlayDevice;
import bootmend.device.WriteGuard;
import bootmend.fat.SectorChange;
import bootmend.folder.MountedFolder;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Clock;

/**
 * Carries a plan out: undo record first, then step by step with a force after each, then the read-back; only then is
 * the change done.
 */
public final class Committer {

    private final UndoStore store;
    private final Clock clock;

    public Committer(UndoStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    /**
     * Makes the change that {@code plan} names and nothing else.
     *
     * @param cardPath where the card is now, for the record
     * @throws CardException of kind REFUSED when nothing was written, of kind CUT_SHORT when something may have been
     */
    public Committed commit(BlockDevice card, String cardPath, Plan plan) throws CardException {
        return commit(card, cardPath, plan, "");
    }

    /** The same in a mounted folder; each file changes as a whole. */
    public Committed commit(MountedFolder folder, String cardPath, Plan plan) throws CardException {
        return commit(folder, cardPath, plan, "");
    }

    /** Takes back the change of {@code done} by putting the files back. */
    public Committed takeBack(MountedFolder folder, String cardPath, Plan back, UndoRecord done) throws CardException {
        return marked(commit(folder, cardPath, back, done.id()), done);
    }

    private Committed commit(MountedFolder folder, String cardPath, Plan plan, String takesBack) throws CardException {
        FolderCommit.refuseUnlessAsPlanned(folder, plan);
        UndoRecord record = store.open(plan, cardPath, takesBack, clock.instant());
        try {
            FolderCommit.write(folder, plan);
            return new Committed(store.finish(record), false);
        } catch (IOException | RuntimeException e) {
            throw CardException.cutShort(
                    "the change was cut short (" + e.getMessage() + ")",
                    "Mount the card again.",
                    e,
                    NextStep.RecoverCard.of(record.file()));
        }
    }

    /** Takes back the change of {@code done} by writing it backwards. */
    Committed takeBack(BlockDevice card, String cardPath, Plan back, UndoRecord done) throws CardException {
        return marked(commit(card, cardPath, back, done.id()), done);
    }

    private Committed marked(Committed committed, UndoRecord done) throws CardException {
        try {
            store.markTakenBack(done);
        } catch (IOException e) {
            throw CardException.cutShort(
                    "the change was taken back, but its undo record could not be marked (" + e + ")",
                    "Make room in bootmend's data folder; the card itself is done.",
                    e);
        }
        return committed;
    }

    private Committed commit(BlockDevice card, String cardPath, Plan plan, String takesBack) throws CardException {
        if (plan.isEmpty()) {
            throw new IllegalArgumentException("an empty plan has nothing to commit");
        }
        refuseUnlessAsPlanned(card, plan);
        UndoRecord record = store.open(plan, cardPath, takesBack, clock.instant());
        try {
            write(card, plan);
            SecondReader.Answer second = new ReadBack(card, plan).check();
            return new Committed(store.finish(record), second == SecondReader.Answer.AGREES);
        } catch (CardException | IOException | RuntimeException e) {
            throw CardException.cutShort(
                    "the change was cut short (" + e.getMessage() + ")",
                    "Put the card back in.",
                    e,
                    NextStep.RecoverCard.of(record.file()));
        }
    }

    private static void write(BlockDevice card, Plan plan) throws CardException, IOException {
        WriteGuard guard = new WriteGuard(card, plan.sectors());
        for (PlanStep step : plan.steps()) {
            for (SectorChange change : step.changes()) {
                guard.write(change.offset(), ByteBuffer.wrap(change.after()).asReadOnlyBuffer());
            }
            guard.flush();
        }
    }

    /** The plan was worked out on what was read; a card that has changed since, or a plan that would not work, stops here. */
    private static void refuseUnlessAsPlanned(BlockDevice card, Plan plan) throws CardException {
        long stray = plan.firstStraySector();
        if (stray >= 0) {
            throw CardException.refused(
                    "the plan names the sector at byte " + stray + ", which such a change never " + "touches",
                    "Nothing was written. This is a fault in bootmend; please report it.");
        }
        try {
            long changed = ReadBack.firstDifference(card, plan.contentBefore());
            if (changed >= 0) {
                throw CardException.refused(
                        "the sector at byte " + changed + " changed since it was read",
                        "Try again; if this happens twice, take the card out and put it back in.");
            }
            new ReadBack(new OverlayDevice(card, plan.contentAfter()), plan).checkFiles();
        } catch (IOException e) {
            throw CardException.refused(
                    "the plan does not hold on this card (" + e.getMessage() + ")",
                    "Nothing was written.",
                    e,
                    NextStep.Plain.REPAIR_CARD);
        }
    }
}
