package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.OverlayDevice;
import bootmend.fat.FatVolume;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.time.LocalDateTime;

/**
 * Works out how to take a finished change back: sector by sector where the card is still as the change left it, else
 * file by file where only the files are.
 */
public final class TakeBack {

    private final BlockDevice card;
    private final FatVolume volume;
    private final CardId id;

    public TakeBack(BlockDevice card, FatVolume volume, CardId id) {
        this.card = card;
        this.volume = volume;
        this.id = id;
    }

    /** The plan that takes {@code record} back. */
    public Plan plan(UndoRecord record, LocalDateTime now, boolean inPlaceAllowed) throws CardException, IOException {
        Plan back = record.plan().reversed("take back: " + record.plan().title());
        if (ReadBack.firstDifference(card, back.contentBefore()) < 0 && works(back)) {
            return back;
        }
        if (back.files().isEmpty()) {
            throw CardException.refused(
                    "the card was changed since in a sector that \""
                            + record.plan().title() + "\" wrote, so that cannot be taken back",
                    "",
                    NextStep.Plain.REPAIR_CARD);
        }
        ChangePlanner planner = new ChangePlanner(volume, id, now, inPlaceAllowed);
        for (FileChange change : back.files()) {
            planner.put(change);
        }
        return planner.plan(back.title());
    }

    /** Makes the change that {@link #plan} worked out and marks {@code record} as taken back. */
    public Committed commit(Committer committer, String cardPath, Plan back, UndoRecord record) throws CardException {
        return committer.takeBack(card, cardPath, back, record);
    }

    /** Whether the old content still stands where it stood: it was released, so something else may lie there now. */
    private boolean works(Plan back) {
        try {
            new ReadBack(new OverlayDevice(card, back.contentAfter()), back).checkFiles();
            return true;
        } catch (IOException e) {
            return false;
        }
    }
}
