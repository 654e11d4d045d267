package bootmend.change;

import bootmend.CardException;
import bootmend.fat.BootFiles;
import bootmend.folder.MountedFolder;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;

/** The files of a mounted folder: each new file is written beside the old, forced, and renamed over it. */
final class FolderTarget extends Target {

    private final MountedFolder folder;

    FolderTarget(MountedFolder folder, CardId id, Medium medium, BooleanSupplier named) {
        super(id, medium, named);
        this.folder = folder;
    }

    @Override
    FilePlanner planner(LocalDateTime now, boolean inPlaceAllowed) {
        return new FolderPlanner(folder, id());
    }

    @Override
    BootFiles files() {
        return folder;
    }

    @Override
    void gate(Plan plan, boolean backwards, String remedy) throws CardException {
        PlanBounds.check(plan, remedy);
        if (!plan.isOfFolder()) {
            throw CardException.refused("the plan is one for a card's sectors, and this is a mounted folder", remedy);
        }
        for (FileChange file : plan.files()) {
            String beside = plan.beside().get(file.path());
            boolean outside = !MountedFolder.isInsidePath(file.path())
                    || beside != null && !MountedFolder.isTemporaryName(beside);
            if (outside) {
                throw CardException.refused(
                        "the plan names a file that no boot partition's folder can hold, or that lies outside it",
                        remedy);
            }
        }
    }

    /** What the file holds now, of which one byte more than any version of it is enough. */
    private byte[] now(FileChange file) throws IOException {
        return folder.content(file.path(), 1 + Math.max(length(file.before()), length(file.after())));
    }

    private static int length(byte[] bytes) {
        return bytes == null ? 0 : bytes.length;
    }

    @Override
    void refuseUnlessAsPlanned(Plan plan) throws CardException {
        for (FileChange file : plan.files()) {
            try {
                if (!Arrays.equals(now(file), file.before())) {
                    throw CardException.refused(file.path() + " changed since it was read", "Try again.");
                }
                String beside = plan.beside().get(file.path());
                if (beside == null || !folder.isFreeBeside(file.path(), beside)) {
                    throw CardException.refused(
                            "the name " + beside + " beside " + file.path() + " was free and no longer is",
                            "Try again.");
                }
            } catch (CardException e) {
                throw e;
            } catch (IOException | RuntimeException e) {
                throw CardException.refused(
                        file.path() + " could not be read again (" + e.getMessage() + ")",
                        "Nothing was written. Check that the card still is mounted, then try again.",
                        e);
            }
        }
    }

    /**
     * Files that hold the new content since just when the change began show that it was made; the same content alone may
     * have come there otherwise.
     */
    @Override
    Standing look(UndoRecord record) throws IOException {
        int before = 0;
        int after = 0;
        List<FileChange> files = record.plan().files();
        for (FileChange file : files) {
            byte[] now = now(file);
            before += Arrays.equals(now, file.before()) ? 1 : 0;
            after += Arrays.equals(now, file.after()) ? 1 : 0;
        }
        OpenChange.Extent extent = after == files.size()
                ? OpenChange.Extent.ALL
                : before == files.size()
                        ? OpenChange.Extent.NOTHING
                        : before + after == files.size() ? OpenChange.Extent.PART : OpenChange.Extent.FOREIGN;
        return new Standing(
                new OpenChange(record, extent, after == files.size(), List.of()),
                !begunBy(record).isEmpty() && extent != OpenChange.Extent.FOREIGN);
    }

    @Override
    boolean isTimed(UndoRecord record) throws IOException {
        return isWrittenBy(record);
    }

    @Override
    Set<Object> begunBy(UndoRecord record) throws IOException {
        Set<Object> paths = new HashSet<>();
        for (FileChange file : record.plan().files()) {
            byte[] now = now(file);
            if (now != null && Arrays.equals(now, file.after()) && isWrittenBy(record, file)) {
                paths.add(file.path());
            }
        }
        return paths;
    }

    private boolean isWrittenBy(UndoRecord record, FileChange file) throws IOException {
        Optional<Instant> written = folder.written(file.path());
        return written.equals(Optional.of(MountedFolder.inFatSteps(record.created())));
    }

    /** Whether the new content of every file stands there since just when the change was made. */
    boolean isWrittenBy(UndoRecord record) throws IOException {
        boolean any = false;
        for (FileChange file : record.plan().files()) {
            if (file.after() != null && !isWrittenBy(record, file)) {
                return false;
            }
            any |= file.after() != null;
        }
        return any;
    }

    @Override
    boolean explains(UndoRecord by, Plan plan, UndoRecord open) throws IOException {
        for (FileChange file : plan.files()) {
            if (!Arrays.equals(now(file), file.after())) {
                return false;
            }
        }
        return by.plan().equals(plan) && isWrittenBy(by);
    }

    @Override
    boolean holds(Plan plan) {
        return false;
    }

    @Override
    boolean stands(Plan plan, Map<Long, byte[]> before) {
        return false;
    }

    /** A folder holds no more of earlier changes than what its files hold. */
    @Override
    Proof proof(UndoRecord record, Map<Long, byte[]> before, List<UndoRecord> others) throws IOException {
        return isWrittenBy(record) ? Proof.SHOWN : Proof.POSSIBLE;
    }

    @Override
    Writing all(Plan plan, UndoRecord record) {
        return left(plan, record);
    }

    @Override
    Writing left(Plan plan, UndoRecord record) {
        return () -> {
            for (FileChange file : plan.files()) {
                if (!Arrays.equals(now(file), file.after())) {
                    String beside = plan.beside().getOrDefault(file.path(), "");
                    if (beside.isEmpty()) {
                        beside = folder.freeNameBeside(file.path(), Set.of());
                    }
                    tidy(file, beside);
                    folder.put(file.path(), beside, file.after(), record.created());
                }
            }
            for (FileChange file : plan.files()) {
                if (plan.beside().containsKey(file.path())) {
                    tidy(file, plan.beside().get(file.path()));
                }
            }
        };
    }

    /** A cut leaves the start of the new content, or, while a change is undone, of the old. */
    private void tidy(FileChange file, String beside) throws IOException {
        folder.tidy(file.path(), beside, file.after());
        folder.tidy(file.path(), beside, file.before());
    }

    @Override
    boolean readBack(Plan plan) throws IOException {
        for (FileChange file : plan.files()) {
            if (!Arrays.equals(now(file), file.after())) {
                throw new IOException(file.path() + " does not read back as it was written");
            }
        }
        return false;
    }

    @Override
    void readBackUndone(Plan back) throws IOException {
        readBack(back);
    }

    @Override
    Committed.Recorded committed(UndoRecord record, boolean secondReaderAgrees) {
        return new Committed.ToFolder(record, isStillNamed());
    }

    @Override
    String again() {
        return "Mount the card again.";
    }
}
