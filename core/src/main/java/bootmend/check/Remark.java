package bootmend.check;

import bootmend.finding.Place;
import java.util.Set;

/**
 * What a check saw, before a rule says how heavy it is.
 *
 * @param rule id of the rule
 * @param where where
 * @param what one sentence with the values
 * @param boards ids of the boards it holds for; empty where no board matters
 */
record Remark(String rule, Place where, String what, Set<String> boards) {

    Remark {
        boards = Set.copyOf(boards);
    }

    /** A remark that holds whatever the board. */
    static Remark of(String rule, Place where, String what) {
        return new Remark(rule, where, what, Set.of());
    }

    static Remark on(BoardReading board, String rule, Place where, String what) {
        return new Remark(rule, where, what, Set.of(board.id()));
    }
}
