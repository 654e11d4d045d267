package bootmend.tuning;

import java.util.List;

/**
 * The stock value that several boards share.
 *
 * @param boards the boards and revisions, as one column of the published table lists them
 * @param stock the value
 */
public record BoardStock(List<BoardRange> boards, Stock stock) {
}
