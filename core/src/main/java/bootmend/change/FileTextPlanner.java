package bootmend.change;

import bootmend.CardException;
import bootmend.fat.DirectoryEntry;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Works out what becomes of a config file that is on no card; there is no other file beside it. */
public final class FileTextPlanner implements FilePlanner {

    private final CardId id;
    private final List<FileChange> files = new ArrayList<>();

    public FileTextPlanner(CardId id) {
        this.id = id;
    }

    @Override
    public void replace(String path, DirectoryEntry file, byte[] before, byte[] after) {
        if (!Arrays.equals(before, after)) {
            files.add(new FileChange(path, before, after));
        }
    }

    @Override
    public void put(FileChange change) throws CardException {
        throw CardException.refused(
                "a config file on its own has no " + change.path() + " beside it",
                "Name the card, or the folder where its boot partition is mounted.");
    }

    @Override
    public Plan plan(String title) {
        return new Plan(id, Plan.Purpose.FOLDER, title, files, List.of(), Map.of());
    }
}
