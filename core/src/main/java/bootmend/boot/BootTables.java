package bootmend.boot;

import bootmend.tuning.TuningTables;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What is published about the files that boards start from. */
public final class BootTables {

    private final TuningTables tuning;
    private final Map<String, BoardFiles> boards;
    private final List<StartVariant> variants = StartVariant.load();
    private final List<UpdateFile> updates = UpdateFile.load();

    /** @throws bootmend.tuning.DataFileException if a data file is damaged */
    public BootTables(TuningTables tuning) {
        this.tuning = tuning;
        this.boards = BoardFiles.load(tuning.boards()).stream()
                .collect(Collectors.toMap(BoardFiles::board, Function.identity()));
    }

    /** What a board starts from unless its config file says otherwise, each as a phrase of file names. */
    public List<String> usualFiles(String boardId) {
        return boards.get(boardId).words();
    }

    /**
     * Ids of the boards that a card can be meant for, in the boards' order; none where nothing tells one.
     *
     * @param fileNames names of files, without folders, where boards look for device trees, kernels and start files
     */
    public Set<String> meantFor(List<String> fileNames) {
        return new MeantFor(this, fileNames, false).boards().keySet();
    }

    /** Every published name of a file that updates the boot memory. */
    public static List<String> updateFileNames() {
        return UpdateFile.load().stream().map(UpdateFile::name).toList();
    }

    BoardFiles of(String boardId) {
        return boards.get(boardId);
    }

    /** In the order of the boards' own table. */
    List<BoardFiles> all() {
        return tuning.boards().all().stream().map(board -> of(board.id())).toList();
    }

    List<StartVariant> variants() {
        return variants;
    }

    List<UpdateFile> updates() {
        return updates;
    }

    TuningTables tuning() {
        return tuning;
    }
}
