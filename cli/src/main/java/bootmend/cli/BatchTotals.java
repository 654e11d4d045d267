package bootmend.cli;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** How many cards of a batch came to what, and the worst exit code among them. */
final class BatchTotals {

    private final Map<CardState, Integer> states = new EnumMap<>(CardState.class);
    private int cards;
    private int exitCode = ExitCode.DONE;

    void add(CardReport card) {
        cards++;
        states.merge(card.state(), 1, Integer::sum);
        worsen(card.exitCode());
    }

    void worsen(int code) {
        exitCode = Math.max(exitCode, code);
    }

    int cards() {
        return cards;
    }

    int exitCode() {
        return exitCode;
    }

    /** Such as {@code 998 changed, 2 failed}. */
    String words() {
        return states.entrySet().stream().map(each -> each.getValue() + " " + each.getKey().words())
                .collect(Collectors.joining(", "));
    }

    /** By the states' words, in the order of the states. */
    Map<String, Integer> byState() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        states.forEach((state, count) -> counts.put(state.words(), count));
        return counts;
    }
}
