package bootmend.boot;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Boards whose boot chains come to the same on one card.
 *
 * @param start which start of the board it is about
 * @param verdict what their chains come to, whichever files each is made of
 * @param chains one for each board, in the boards' own order; never empty
 */
public record BootOutcome(BootChain.Start start, Verdict verdict, List<BootChain> chains) {

    private record Same(BootChain.Start start, Verdict verdict) {}

    public BootOutcome {
        chains = List.copyOf(chains);
    }

    /** What a card comes to, boards that come to the same together; in the order of their first boards. */
    public static List<BootOutcome> of(BootDiagnosis diagnosis) {
        Map<Same, List<BootChain>> groups = new LinkedHashMap<>();
        for (BoardDiagnosis board : diagnosis.boards()) {
            add(groups, board.chain());
            board.tryOnce().ifPresent(chain -> add(groups, chain));
        }
        return groups.entrySet().stream()
                .map(group ->
                        new BootOutcome(group.getKey().start(), group.getKey().verdict(), group.getValue()))
                .toList();
    }

    private static void add(Map<Same, List<BootChain>> groups, BootChain chain) {
        groups.computeIfAbsent(new Same(chain.start(), chain.verdict()), none -> new ArrayList<>())
                .add(chain);
    }

    /** The boards' ids. */
    public List<String> boards() {
        return chains.stream().map(BootChain::board).toList();
    }

    /** The chain that stands for all of them where one is told link by link. */
    public BootChain first() {
        return chains.get(0);
    }
}
