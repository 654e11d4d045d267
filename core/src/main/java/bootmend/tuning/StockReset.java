package bootmend.tuning;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Says what becomes of the lines of a config file when it goes back to stock. */
public final class StockReset {

    private StockReset() {}

    /**
     * What becomes of a line.
     *
     * @param line its number, counted from 1
     * @param value its new value, where it keeps what does not tune; empty where the whole line goes
     */
    public record LineReset(int line, Optional<String> value) {}

    /**
     * What becomes of the active lines whose key resets, and of those whose key is in {@code also}.
     *
     * @param also keys whose lines are otherwise left alone
     * @param atStock whether a line holds the stock value already, so that nothing is to be done about it
     */
    public static List<LineReset> of(
            ConfigDocument document, Vocabulary vocabulary, Set<String> also, Predicate<TuningLine> atStock) {
        Map<Integer, Set<String>> keys = new LinkedHashMap<>();
        TuningLines.find(document, vocabulary).stream()
                .filter(line -> line.resets() && !atStock.test(line)
                        || line.isActive() && also.contains(line.tuningKey().key()))
                .forEach(line -> keys.computeIfAbsent(line.lineNumber(), none -> new LinkedHashSet<>())
                        .add(line.tuningKey().key()));
        return of(document, keys);
    }

    /** What becomes of lines from which these keys go; a line of one key goes whole. */
    public static List<LineReset> of(ConfigDocument document, Map<Integer, Set<String>> keys) {
        List<LineReset> resets = new ArrayList<>();
        keys.forEach((line, tuned) -> resets.add(new LineReset(line, rest(document.line(line), tuned))));
        return List.copyOf(resets);
    }

    /** What the line keeps beside the keys that go. Past the line limit nothing is moved to where a board reads it. */
    private static Optional<String> rest(ConfigLine line, Set<String> tuned) {
        return line.kind() instanceof LineKind.Setting setting && Assignment.isList(setting) && !line.isPastLimit()
                ? Optional.of(Assignment.without(setting, tuned)).filter(rest -> !rest.isBlank())
                : Optional.empty();
    }

    /**
     * The document after that.
     *
     * @param remove whether lines that go are taken out rather than commented out
     */
    public static ConfigDocument apply(ConfigDocument document, List<LineReset> resets, boolean remove) {
        List<Integer> gone = resets.stream()
                .filter(reset -> reset.value().isEmpty())
                .map(LineReset::line)
                .toList();
        ConfigDocument changed = withValues(document, resets);
        return remove ? changed.remove(gone) : changed.commentOut(gone);
    }

    /** The document with the lines that keep something, every other line as it was. */
    public static ConfigDocument withValues(ConfigDocument document, List<LineReset> resets) {
        Map<Integer, String> values = new HashMap<>();
        resets.forEach(reset -> reset.value().ifPresent(value -> values.put(reset.line(), value)));
        return values.isEmpty() ? document : document.setValues(values);
    }
}
