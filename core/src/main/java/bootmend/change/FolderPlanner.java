package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.fat.DirectoryEntry;
import bootmend.folder.MountedFolder;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Works out which files of a mounted folder get new content. */
public final class FolderPlanner implements FilePlanner {

    private final MountedFolder folder;
    private final CardId card;
    private final List<FileChange> files = new ArrayList<>();
    private final Map<String, String> beside = new TreeMap<>();

    public FolderPlanner(MountedFolder folder, CardId card) {
        this.folder = folder;
        this.card = card;
    }

    @Override
    public void replace(String path, DirectoryEntry file, byte[] before, byte[] after) throws IOException {
        add(new FileChange(path, before, after));
    }

    @Override
    public void put(FileChange change) throws CardException, IOException {
        boolean there = folder.find(change.path()).isPresent();
        if (there != (change.before() != null)) {
            throw CardException.refused(
                    change.path() + (there ? " is in the folder" : " is no longer in the folder"),
                    "The card was changed since.",
                    NextStep.Plain.SHOW_CARD);
        }
        add(change);
    }

    private void add(FileChange change) throws IOException {
        if (!Arrays.equals(change.before(), change.after())) {
            files.add(change);
            beside.put(change.path(), folder.freeNameBeside(change.path(), Set.copyOf(beside.values())));
        }
    }

    @Override
    public Plan plan(String title) {
        return new Plan(card, Plan.Purpose.FOLDER, title, files, List.of(), beside);
    }
}
