package bootmend.gui.model;

import bootmend.page.CardOutcome;
import bootmend.page.CardState;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the cards of a batch came to, counted.
 *
 * @param states how many came to what
 * @param stock how many were at stock when they were last read
 * @param tuned how many were not
 * @param damaged how many keep damage that a repair leaves
 * @param lines lines that change, over all cards
 * @param sectors sector writes, over all cards
 * @param reasons why cards failed, each with how many did, the commonest first
 */
public record BatchTally(
        int cards,
        Map<CardState, Integer> states,
        int stock,
        int tuned,
        int damaged,
        long lines,
        long sectors,
        Map<String, Integer> reasons) {

    static BatchTally of(List<BatchRow> rows) {
        Map<CardState, Integer> states = new EnumMap<>(CardState.class);
        Map<String, Integer> reasons = new LinkedHashMap<>();
        int stock = 0;
        int tuned = 0;
        int damaged = 0;
        long lines = 0;
        long sectors = 0;
        for (BatchRow row : rows) {
            Optional<CardOutcome> came = row.outcome();
            came.ifPresent(outcome -> states.merge(outcome.state(), 1, Integer::sum));
            if (row.is(CardState.FAILED)) {
                reasons.merge(came.get().error().orElseThrow().getMessage(), 1, Integer::sum);
            }
            if (row.now().filter(was -> was.config().isPresent()).isPresent()) {
                stock += row.now().get().stock() ? 1 : 0;
                tuned += row.now().get().stock() ? 0 : 1;
            }
            boolean changes = row.is(CardState.PLANNED) || row.is(CardState.CHANGED);
            boolean left = changes || row.is(CardState.NOTHING);
            damaged += left && row.wantsAttention() ? 1 : 0;
            lines += changes ? came.get().changed().size() : 0;
            sectors += changes ? row.sectors() : 0;
        }
        return new BatchTally(
                rows.size(),
                Collections.unmodifiableMap(states),
                stock,
                tuned,
                damaged,
                lines,
                sectors,
                commonestFirst(reasons));
    }

    private static Map<String, Integer> commonestFirst(Map<String, Integer> reasons) {
        Map<String, Integer> sorted = new LinkedHashMap<>();
        reasons.entrySet().stream()
                .sorted(Map.Entry.comparingByValue(Comparator.reverseOrder()))
                .forEach(each -> sorted.put(each.getKey(), each.getValue()));
        return Collections.unmodifiableMap(sorted);
    }

    /** How many came to that. */
    public int count(CardState state) {
        return states.getOrDefault(state, 0);
    }
}
