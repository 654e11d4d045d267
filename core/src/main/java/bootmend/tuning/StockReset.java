package bootmend.tuning;

import bootmend.config.ConfigDocument;
import java.util.List;
import java.util.Set;

/** Says which lines of a config file go when it goes back to stock. */
public final class StockReset {

    private StockReset() {}

    /**
     * The numbers of the active lines whose key resets, and of those whose key is in {@code also}.
     *
     * @param also keys whose lines are otherwise left alone
     */
    public static List<Integer> lineNumbers(ConfigDocument document, Vocabulary vocabulary, Set<String> also) {
        return TuningLines.find(document, vocabulary).stream()
                .filter(line -> line.resets() || line.isActive() && also.contains(line.key()))
                .map(TuningLine::lineNumber)
                .toList();
    }
}
