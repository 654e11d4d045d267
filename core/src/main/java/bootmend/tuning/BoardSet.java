package bootmend.tuning;

import bootmend.config.Truth;
import java.util.List;
import java.util.OptionalInt;

/** The boards that something is for: every board, or a list of boards and revisions. */
public final class BoardSet {

    private static final String EVERY = "*";

    private final boolean every;
    private final List<BoardRange> ranges;

    private BoardSet(boolean every, List<BoardRange> ranges) {
        this.every = every;
        this.ranges = ranges;
    }

    /** Reads {@code *} or a list of board ranges. */
    static BoardSet parse(List<String> words, DataRow row) {
        if (words.equals(List.of(EVERY))) {
            return new BoardSet(true, List.of());
        }
        return new BoardSet(
                false, words.stream().map(word -> BoardRange.parse(word, row)).toList());
    }

    public boolean isEvery() {
        return every;
    }

    /** The listed boards; empty where it is every board. */
    public List<BoardRange> ranges() {
        return ranges;
    }

    /** Whether a board is in the set; unknown where that hangs on a revision that is not given. */
    public Truth contains(String boardId, OptionalInt revision) {
        return ranges.stream().map(range -> range.contains(boardId, revision)).reduce(Truth.of(every), Truth::or);
    }
}
