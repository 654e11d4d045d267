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

    private final FatVolume volume;
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
        this.volume = volume;
        this.geometry = volume.geometry();
        this.edit = new VolumeEdit(volume);
        this.card = card;
        this.written = written;
        this.inPlaceAllowed = inPlaceAllowed;
    }

    @Override
    public void put(FileChange change) throws CardException, IOException {
        Optional<DirectoryEntry> file = volume.find(change.path());
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

    /** Adds a new file in the root folder, whose name is an 8.3 name of ASCII letters. */
    public void create(String name, byte[] content) throws CardException, IOException {
        List<Long> chain = edit.takeFree((int) geometry.clustersFor(content.length), Geometry.FIRST_CLUSTER)
                .orElseThrow(() -> CardException.refused(
                        "the boot partition has no room for " + name,
                        "Delete a file that the board does not need from the boot partition, then try again."));
        long slot = rootSlot(name);
        edit.putData(chain, content);
        edit.link(chain);
        step(PlanStep.Kind.PREPARE);
        edit.putNewEntry(slot, name, chain.isEmpty() ? 0 : chain.get(0), content.length, written);
        step(PlanStep.Kind.COMMIT);
        edit.adjustFsInfo(-chain.size(), chain.isEmpty() ? 0 : chain.get(chain.size() - 1));
        step(PlanStep.Kind.CLEAN_UP);
        files.add(new FileChange(name, null, content));
    }

    /** A slot of the root folder, in a new cluster of it where all others are taken. */
    private long rootSlot(String name) throws CardException, IOException {
        Optional<Long> slot = edit.takeRootSlot();
        if (slot.isPresent()) {
            return slot.get();
        }
        Optional<List<Long>> cluster = edit.rootCanGrow() ? edit.takeFree(1, Geometry.FIRST_CLUSTER) : Optional.empty();
        if (cluster.isEmpty()) {
            throw CardException.refused(
                    "the boot partition's root folder has no room for " + name,
                    "Delete a file that the board does not need from the boot partition, then try again.");
        }
        // The new cluster's empty slots must be on the card before the folder leads into it.
        edit.putEmptySlots(cluster.get().get(0));
        step(PlanStep.Kind.PREPARE);
        long first = edit.growRoot(cluster.get().get(0));
        edit.adjustFsInfo(-1, 0);
        step(PlanStep.Kind.PREPARE);
        return first;
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
            if (edit.isShared(volume, file, chain)) {
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
