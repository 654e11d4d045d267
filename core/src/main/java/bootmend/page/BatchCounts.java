package bootmend.page;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** How many cards of a batch came to what. */
public final class BatchCounts {

    private final Map<CardState, Integer> states = new EnumMap<>(CardState.class);
    private int cards;

    public void add(CardState state) {
        cards++;
        states.merge(state, 1, Integer::sum);
    }

    public int cards() {
        return cards;
    }

    /** Such as {@code 998 changed, 2 failed}. */
    public String words() {
        return states.entrySet().stream()
                .map(each -> each.getValue() + " " + each.getKey().words())
                .collect(Collectors.joining(", "));
    }

    /** By the states' words, in the order of the states; without those that no card came to. */
    public Map<String, Integer> byState() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        states.forEach((state, count) -> counts.put(state.words(), count));
        return counts;
    }
}
