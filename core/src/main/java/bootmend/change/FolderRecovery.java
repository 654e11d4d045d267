package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.folder.MountedFolder;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Recovers a mounted folder file by file; each file is whole, old or new, whenever the change was cut. */
public final class FolderRecovery implements Recovery {

    private final MountedFolder folder;
    private final CardId id;
    private final String cardPath;
    private final UndoStore store;

    /** @param cardPath where the folder is now */
    public FolderRecovery(MountedFolder folder, CardId id, String cardPath, UndoStore store) {
        this.folder = folder;
        this.id = id;
        this.cardPath = cardPath;
        this.store = store;
    }

    @Override
    public Optional<OpenChange> find() throws CardException, IOException {
        return WaitingChange.among(store.openFor(id), cardPath, this::look);
    }

    private OpenChange look(UndoRecord record) throws IOException {
        int before = 0;
        int after = 0;
        List<FileChange> files = record.plan().files();
        for (FileChange file : files) {
            byte[] now = FolderCommit.now(folder, file);
            before += Arrays.equals(now, file.before()) ? 1 : 0;
            after += Arrays.equals(now, file.after()) ? 1 : 0;
        }
        OpenChange.Extent extent = after == files.size()
                ? OpenChange.Extent.ALL
                : before == files.size()
                        ? OpenChange.Extent.NOTHING
                        : before + after == files.size() ? OpenChange.Extent.PART : OpenChange.Extent.FOREIGN;
        return new OpenChange(record, extent, after == files.size(), List.of());
    }

    @Override
    public Committed finish(OpenChange change) throws CardException {
        return run(change, change.record().plan(), () -> {
            UndoRecord done = store.finish(change.record());
            if (done.takesOtherBack()) {
                store.markTakenBack(done.takesBack(), id);
            }
            return done;
        });
    }

    @Override
    public Committed takeBack(OpenChange change) throws CardException {
        Plan back = change.record()
                .plan()
                .reversed("take back: " + change.record().plan().title());
        return run(change, back, () -> store.closeTakenBack(change.record()));
    }

    private interface Ending {
        UndoRecord run() throws CardException, IOException;
    }

    private Committed run(OpenChange change, Plan plan, Ending ending) throws CardException {
        if (change.extent() == OpenChange.Extent.FOREIGN) {
            throw CardException.refused(
                    "a file was changed since, to what the cut change never wrote",
                    "Nothing was written; the undo record is " + change.record().file() + ".",
                    NextStep.Plain.SHOW_CARD);
        }
        try {
            FolderCommit.write(folder, plan);
            return new Committed(ending.run(), false);
        } catch (IOException e) {
            throw CardException.cutShort(
                    "the recovery was cut short (" + e.getMessage() + ")",
                    "Mount the card again.",
                    e,
                    NextStep.RecoverCard.of(change.record().file()));
        }
    }
}
