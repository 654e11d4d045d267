package bootmend.tuning;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Which boot files each board needs. */
public final class BoardFileTable {

    private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);

    private final List<BoardFiles> all;
    private final Set<String> deviceTrees;

    private BoardFileTable(List<BoardFiles> all) {
        this.all = all;
        this.deviceTrees =
                all.stream().flatMap(files -> files.deviceTrees().stream()).collect(Collectors.toUnmodifiableSet());
    }

    static BoardFileTable read(DataFile file, Boards boards, Sources sources) {
        return new BoardFileTable(
                file.withColumns("board", "kernels", "firmware", "bootcode", "device_trees", "source")
                        .map(row -> files(row, boards, sources), BoardFiles::board));
    }

    private static BoardFiles files(DataRow row, Boards boards, Sources sources) {
        String board = row.required("board");
        if (boards.find(board).isEmpty()) {
            throw row.error("unknown board " + board);
        }
        List<String> kernels = row.words("kernels");
        if (kernels.isEmpty()) {
            throw row.error("column kernels is empty");
        }
        return new BoardFiles(board, kernels,
                row.words("firmware").stream().map(word -> FirmwarePair.parse(word, row)).toList(),
                row.choice("bootcode", YES_NO), row.words("device_trees"), sources.citation(row, "source"));
    }

    /** The files of a board; empty where they are not known. */
    public Optional<BoardFiles> find(String boardId) {
        return all.stream().filter(files -> files.board().equals(boardId)).findFirst();
    }

    /** The names of every known device tree, in lower case. */
    public Set<String> deviceTrees() {
        return deviceTrees;
    }
}
