package bootmend.tuning;

import bootmend.config.Truth;
import java.util.List;
import java.util.OptionalInt;

/**
 * The stock value that several boards share.
 *
 * @param boards the boards and revisions, as one column of the published table lists them
 * @param stock the value
 */
public record BoardStock(List<BoardRange> boards, Stock stock) {

    boolean mayBeOf(String boardId, OptionalInt revision) {
        for (BoardRange range : boards) {
            if (range.contains(boardId, revision) != Truth.FALSE) {
                return true;
            }
        }
        return false;
    }
}
