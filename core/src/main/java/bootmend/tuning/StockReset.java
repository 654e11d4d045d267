package bootmend.tuning;

import bootmend.config.ConfigDocument;
import java.util.List;

/** Takes a config file back to stock: no active line is left whose key resets. Doing it twice changes nothing more. */
public final class StockReset {

    private StockReset() {
    }

    /** Puts {@code #} in front of each active line whose key resets. */
    public static ConfigDocument commentOut(ConfigDocument document, Vocabulary vocabulary) {
        return document.commentOut(lineNumbers(document, vocabulary));
    }

    /** Takes out each active line whose key resets. */
    public static ConfigDocument remove(ConfigDocument document, Vocabulary vocabulary) {
        return document.remove(lineNumbers(document, vocabulary));
    }

    private static List<Integer> lineNumbers(ConfigDocument document, Vocabulary vocabulary) {
        return TuningLines.find(document, vocabulary).stream().filter(TuningLine::resets)
                .map(TuningLine::lineNumber).toList();
    }
}
