package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.CachedDevice;
import bootmend.device.WriteGuard;
import bootmend.fat.SectorChange;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;

/**
 * Recovers a card sector by sector.
 *
 * <p>Cards written from one image look alike to a record. One on which a part of the change stands is surely the card of
 * the record; where nothing or all of it does, the path decides.
 */
public final class SectorRecovery implements Recovery {

    private final BlockDevice card;
    private final CardId id;
    private final String cardPath;
    private final UndoStore store;

    /** @param cardPath where the card is now */
    public SectorRecovery(BlockDevice card, CardId id, String cardPath, UndoStore store) {
        this.card = card;
        this.id = id;
        this.cardPath = cardPath;
        this.store = store;
    }

    @Override
    public Optional<OpenChange> find() throws CardException, IOException {
        return WaitingChange.among(store.openFor(id), cardPath, this::look);
    }

    private OpenChange look(UndoRecord record) throws IOException {
        Progress progress = Progress.of(record.plan(), card);
        OpenChange.Extent extent = progress.extent();
        boolean committed = extent != OpenChange.Extent.FOREIGN && progress.isCommitted(record.plan());
        return new OpenChange(record, extent, committed, progress.foreignSectors());
    }

    @Override
    public Committed finish(OpenChange change) throws CardException {
        Plan plan = change.record().plan();
        return run(change, plan, () -> {
            SecondReader.Answer second = new ReadBack(card, plan).check();
            UndoRecord done = store.finish(change.record());
            if (done.takesOtherBack()) {
                store.markTakenBack(done.takesBack(), id);
            }
            return new Committed(done, second == SecondReader.Answer.AGREES);
        });
    }

    @Override
    public Committed takeBack(OpenChange change) throws CardException {
        Plan back = change.record()
                .plan()
                .reversed("take back: " + change.record().plan().title());
        return run(change, back, () -> {
            CachedDevice.drop(card);
            long wrong = ReadBack.firstDifference(card, back.contentAfter());
            if (wrong >= 0) {
                throw new IOException("the sector at byte " + wrong + " does not read back as it was written");
            }
            return new Committed(store.closeTakenBack(change.record()), false);
        });
    }

    private interface Ending {
        Committed run() throws CardException, IOException;
    }

    private Committed run(OpenChange change, Plan plan, Ending ending) throws CardException {
        refuseForeign(change);
        try {
            WriteGuard guard = new WriteGuard(card, plan.sectors());
            for (List<SectorChange> step : Progress.of(plan, card).leftToFinish(plan)) {
                for (SectorChange write : step) {
                    guard.write(write.offset(), ByteBuffer.wrap(write.after()).asReadOnlyBuffer());
                }
                guard.flush();
            }
            return ending.run();
        } catch (IOException e) {
            throw CardException.cutShort(
                    "the recovery was cut short (" + e.getMessage() + ")",
                    "Put the card back in.",
                    e,
                    NextStep.RecoverCard.of(change.record().file()));
        }
    }

    private static void refuseForeign(OpenChange change) throws CardException {
        if (change.extent() == OpenChange.Extent.FOREIGN) {
            throw CardException.refused(
                    "the card was changed since: its sector at byte "
                            + change.foreignSectors().get(0) + " holds what the cut change never wrote"
                            + (change.foreignSectors().size() > 1
                                    ? " (and " + (change.foreignSectors().size() - 1) + " more)"
                                    : ""),
                    "Nothing was written; the undo record is " + change.record().file() + ".",
                    NextStep.Plain.SHOW_CARD,
                    NextStep.Plain.REPAIR_CARD);
        }
    }
}
