package bootmend.check;

import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.Resolution;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Tells which boards find on a card what they start from, by the names of its files. */
public final class BootableBoards {

    private final Map<String, BoardFiles> byBoard;

    /** @throws bootmend.tuning.DataFileException if the data file is damaged */
    public BootableBoards(TuningTables tables) {
        this.byBoard = BoardFiles.load(tables.boards()).stream()
                .collect(Collectors.toMap(BoardFiles::board, Function.identity()));
    }

    /**
     * Whether the board finds its kernel, its firmware and, on a card that has device trees, one for its chip.
     *
     * @param onBoard what the config file comes to on the board, which must be known
     * @param files names at least of the root folder's files, and of those in folders that {@code os_prefix} names
     */
    public boolean canBoot(Resolution onBoard, CardFiles files) {
        return needs(new BoardReading(onBoard.facts().board().orElseThrow(), onBoard), files)
                .boardCanBoot();
    }

    /** What a board starts from unless its config file says otherwise, each as a phrase of file names. */
    public List<String> usualFiles(String boardId) {
        return byBoard.get(boardId).words();
    }

    BootNeeds needs(BoardReading reading, CardFiles files) {
        return new BootNeeds(reading, byBoard.get(reading.id()), files);
    }
}
