package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.fat.BadVolumeException;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import bootmend.fat.VolumeEdit;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Works out how files get new content: beside the old, switched over in one sector, the old released last.
 *
 * <p>A cut at any moment leaves each file whole, old or new. Only where no cluster is free, and only when that was
 * allowed, is a file overwritten in place.
 */
public final class ChangePlanner implements FilePlanner {

    private final Geometry geometry;
    private final VolumeEdit edit;
    private final CardId card;
    private final LocalDateTime written;
    private final boolean inPlaceAllowed;
    private final List<FileChange> files = new ArrayList<>();
    private final List<PlanStep> steps = new ArrayList<>();

    /**
     * @param card the card's identity, which also says where the volume lies on it
     * @param written the time that changed files get, local
     */
    public ChangePlanner(FatVolume volume, CardId card, LocalDateTime written, boolean inPlaceAllowed) {
        this.geometry = volume.geometry();
        this.edit = new VolumeEdit(volume);
        this.card = card;
        this.written = written;
        this.inPlaceAllowed = inPlaceAllowed;
    }

    @Override
    public void put(FileChange change) throws CardException, IOException {
        Optional<DirectoryEntry> file = edit.now().find(change.path());
        if (file.isPresent() != (change.before() != null)) {
            throw CardException.refused(
                    change.path() + (file.isPresent() ? " is on the card" : " is no longer on the card"),
                    "The card was changed since.",
                    NextStep.Plain.SHOW_CARD);
        }
        if (change.after() == null) {
            if (file.isPresent()) {
                remove(change.path(), file.get(), change.before());
            }
        } else if (file.isEmpty()) {
            create(change.path(), change.after());
        } else {
            replace(change.path(), file.get(), change.before(), change.after());
        }
    }

    /** Adds a new file, in folders that are made where they are missing. */
    public void create(String path, byte[] content) throws CardException, IOException {
        int slash = path.lastIndexOf('/');
        DirectoryEntry folder = folder(slash < 0 ? "" : path.substring(0, slash), path);
        List<Long> chain = edit.takeFree((int) geometry.clustersFor(content.length), Geometry.FIRST_CLUSTER)
                .orElseThrow(() -> noRoom("the boot partition has no room for " + path));
        edit.putData(chain, content);
        edit.link(chain);
        enter(
                folder,
                path.substring(slash + 1),
                path,
                VolumeEdit.ARCHIVE,
                chain.isEmpty() ? 0 : chain.get(0),
                content.length);
        edit.adjustFsInfo(-chain.size(), chain.isEmpty() ? 0 : chain.get(chain.size() - 1));
        step(PlanStep.Kind.CLEAN_UP);
        files.add(new FileChange(path, null, content));
    }

    /** The folder at a path, made with those above it where they are missing. */
    private DirectoryEntry folder(String path, String forFile) throws CardException, IOException {
        if (path.isEmpty()) {
            return DirectoryEntry.root(geometry);
        }
        Optional<DirectoryEntry> there = edit.now().find(path);
        if (there.isPresent()) {
            if (!there.get().folder()) {
                throw CardException.refused(
                        path + " is a file on the card, and " + forFile + " would go into a folder of that name",
                        "Rename it on a computer that mounts the card.");
            }
            return there.get();
        }
        int slash = path.lastIndexOf('/');
        DirectoryEntry parent = folder(slash < 0 ? "" : path.substring(0, slash), forFile);
        long cluster = edit.takeFree(1, Geometry.FIRST_CLUSTER)
                .orElseThrow(() -> noRoom("the boot partition has no room for the folder " + path))
                .get(0);
        edit.putEmptySlots(cluster);
        edit.putDots(cluster, slash < 0 ? 0 : parent.firstCluster(), written);
        edit.link(List.of(cluster));
        enter(parent, path.substring(slash + 1), path, VolumeEdit.FOLDER, cluster, 0);
        edit.adjustFsInfo(-1, cluster);
        step(PlanStep.Kind.CLEAN_UP);
        return edit.now().find(path).orElseThrow(() -> new IOException("the new folder " + path + " is not found"));
    }

    /** Gives what was prepared an entry, which is the one write from which on it counts. */
    private void enter(DirectoryEntry folder, String name, String path, byte attributes, long firstCluster, long size)
            throws CardException, IOException {
        VolumeEdit.NewEntry entry = place(folder, name, path);
        entry.clear();
        step(PlanStep.Kind.PREPARE);
        long cluster = 0;
        if (entry.needsCluster()) {
            cluster = grow(entry.folder(), path);
        }
        entry.pad();
        step(PlanStep.Kind.PREPARE);
        entry.put(cluster, attributes, firstCluster, size, written);
        step(PlanStep.Kind.COMMIT);
    }

    private VolumeEdit.NewEntry place(DirectoryEntry folder, String name, String path)
            throws CardException, IOException {
        try {
            return edit.placeFor(folder, name);
        } catch (BadVolumeException e) {
            throw CardException.refused(
                    path + " cannot be added: " + e.getMessage(),
                    "Have the card examined for damage.",
                    e,
                    NextStep.Plain.REPAIR_CARD);
        }
    }

    /** The new cluster's empty slots must be on the card before the folder leads into it. */
    private long grow(long folder, String path) throws CardException, IOException {
        Optional<List<Long>> cluster =
                edit.canGrow(folder) ? edit.takeFree(1, Geometry.FIRST_CLUSTER) : Optional.empty();
        if (cluster.isEmpty()) {
            throw noRoom("the boot partition's folder has no room for " + path);
        }
        long added = cluster.get().get(0);
        edit.putEmptySlots(added);
        step(PlanStep.Kind.PREPARE);
        edit.growFolder(folder, added);
        edit.adjustFsInfo(-1, 0);
        step(PlanStep.Kind.PREPARE);
        return added;
    }

    private static CardException noRoom(String what) {
        return CardException.refused(
                what, "Delete a file that the board does not need from the boot partition, then try again.");
    }

    /** Adds the removal of a file. */
    public void remove(String path, DirectoryEntry file, byte[] content) throws CardException, IOException {
        List<Long> chain = chain(path, file);
        edit.deleteEntry(file);
        step(PlanStep.Kind.COMMIT);
        edit.deleteLongName(file);
        edit.free(chain);
        edit.adjustFsInfo(chain.size(), 0);
        step(PlanStep.Kind.CLEAN_UP);
        files.add(new FileChange(path, content, null));
    }

    @Override
    public void replace(String path, DirectoryEntry file, byte[] before, byte[] after)
            throws CardException, IOException {
        if (Arrays.equals(before, after)) {
            return;
        }
        List<Long> oldChain = chain(path, file);
        int needed = (int) geometry.clustersFor(after.length);
        long hint = oldChain.isEmpty() ? Geometry.FIRST_CLUSTER - 1 : oldChain.get(oldChain.size() - 1);
        Optional<List<Long>> free = edit.takeFree(needed, hint);
        if (free.isPresent()) {
            replaceBeside(file, after, oldChain, free.get());
        } else {
            replaceInPlace(path, file, after, oldChain, needed);
        }
        files.add(new FileChange(path, before, after));
    }

    @Override
    public Plan plan(String title) {
        return Plan.ofSectors(card, Plan.Purpose.CHANGE, title, files, steps);
    }

    private void replaceBeside(DirectoryEntry file, byte[] after, List<Long> oldChain, List<Long> newChain)
            throws IOException {
        edit.putData(newChain, after);
        edit.link(newChain);
        step(PlanStep.Kind.PREPARE);
        edit.putEntry(file, newChain.isEmpty() ? 0 : newChain.get(0), after.length, written);
        step(PlanStep.Kind.COMMIT);
        edit.free(oldChain);
        edit.adjustFsInfo(
                oldChain.size() - newChain.size(), newChain.isEmpty() ? 0 : newChain.get(newChain.size() - 1));
        step(PlanStep.Kind.CLEAN_UP);
    }

    private void replaceInPlace(String path, DirectoryEntry file, byte[] after, List<Long> oldChain, int needed)
            throws CardException, IOException {
        if (needed > oldChain.size()) {
            throw CardException.refused(
                    "the boot partition has no free cluster, and the new " + path
                            + " does not fit where the old one stands",
                    "Delete a file that the board does not need from the boot partition, then try again.");
        }
        if (!inPlaceAllowed) {
            throw CardException.refused(
                    "the boot partition has no free cluster, so " + path
                            + " could only be overwritten in place; a cut in the middle would leave it half old, half "
                            + "new until it is recovered on this computer",
                    "Delete a file that the board does not need from the boot partition, or accept the risk.",
                    NextStep.Allow.IN_PLACE);
        }
        List<Long> kept = oldChain.subList(0, needed);
        edit.putData(kept, after);
        step(PlanStep.Kind.IN_PLACE);
        edit.putEntry(file, kept.isEmpty() ? 0 : kept.get(0), after.length, written);
        step(PlanStep.Kind.COMMIT);
        if (needed < oldChain.size()) {
            edit.link(kept);
            edit.free(oldChain.subList(needed, oldChain.size()));
            edit.adjustFsInfo(oldChain.size() - needed, 0);
            step(PlanStep.Kind.CLEAN_UP);
        }
    }

    private List<Long> chain(String path, DirectoryEntry file) throws CardException, IOException {
        try {
            List<Long> chain = edit.chainOf(file);
            if (edit.isShared(edit.now(), file, chain)) {
                throw CardException.refused(
                        path + " shares clusters with something else on the card",
                        "Make an image of the card and copy what you need off it first.",
                        NextStep.Plain.REPAIR_CARD);
            }
            return chain;
        } catch (BadVolumeException e) {
            throw CardException.refused(
                    path + " cannot be replaced safely: " + e.getMessage(), "", e, NextStep.Plain.REPAIR_CARD);
        }
    }

    private void step(PlanStep.Kind kind) {
        steps.add(new PlanStep(
                kind,
                edit.takeStep().stream().map(c -> c.moved(card.volumeStart())).toList()));
    }
}
