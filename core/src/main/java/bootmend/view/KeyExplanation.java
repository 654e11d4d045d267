package bootmend.view;

import java.util.List;
import java.util.OptionalLong;

/**
 * What a tuning key is.
 *
 * @param meaning whole sentences
 * @param min lowest published value, where there is one
 * @param max highest published value, where there is one
 * @param clamped whether a value above {@code max} counts as {@code max}
 * @param boards the published words on which boards read it
 * @param sets the keys that it sets together; empty for most
 * @param resets whether going back to stock takes its lines out
 * @param stock the stock value on each board; empty for a key that only sets others
 * @param note more to know, possibly empty
 * @param source where all this is published
 */
public record KeyExplanation(
        String key,
        String group,
        String unit,
        String meaning,
        OptionalLong min,
        OptionalLong max,
        boolean clamped,
        String boards,
        List<String> sets,
        boolean resets,
        List<StockOnBoard> stock,
        String note,
        List<CautionView> cautions,
        String source)
        implements Explanation {

    /**
     * A stock value.
     *
     * @param board board id
     * @param stock the value in the key's unit, or words: {@code not published}, {@code not read}
     */
    public record StockOnBoard(String board, String stock) {}

    public KeyExplanation {
        sets = List.copyOf(sets);
        stock = List.copyOf(stock);
        cautions = List.copyOf(cautions);
    }
}
