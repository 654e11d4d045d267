package bootmend.finding;

import java.util.List;

/**
 * One thing a check saw.
 *
 * @param rule id of the rule
 * @param severity how heavy it is for the purpose
 * @param where where on the card
 * @param what one sentence with the values; not yet safe to show
 * @param boards ids of the boards it holds for, in the boards' usual order; empty where no board matters
 * @param meaning what it means
 * @param remedy what to do
 * @param source where the meaning is published, or that it is not
 */
public record Finding(
        String rule,
        Severity severity,
        Place where,
        String what,
        List<String> boards,
        String meaning,
        String remedy,
        String source) {

    public Finding {
        boards = List.copyOf(boards);
    }
}
