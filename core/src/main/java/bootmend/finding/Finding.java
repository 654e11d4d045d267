package bootmend.finding;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * One thing that was seen on a card, whoever looked.
 *
 * @param rule what kind of thing it is, and how heavy for which purpose; for the one purpose alone, where it was looked for
 *     with a purpose
 * @param where where on the card
 * @param what one sentence with the values; not yet safe to show
 * @param boards ids of the boards it holds for, in the boards' usual order; empty where no board matters
 * @param fix what repairs it on this card, as far as is known
 */
public record Finding(Rule rule, Place where, String what, List<String> boards, Fix fix) {

    public Finding {
        boards = List.copyOf(boards);
    }

    /** A finding that holds whatever the board, and that is repaired as the rule says. */
    public static Finding of(Rule rule, Place where, String what) {
        return new Finding(rule, where, what, List.of(), rule.fix());
    }

    /** What stays the same for the same kind of thing at the same place, however far it goes. */
    public record Key(String id, Place where) {}

    public Key key() {
        return new Key(id(), where);
    }

    /** By the rules, in the order of each one's first finding: what a rule says needs telling only once. */
    public static Map<Rule, List<Finding>> byRule(List<Finding> findings) {
        return findings.stream().collect(Collectors.groupingBy(Finding::rule, LinkedHashMap::new, Collectors.toList()));
    }

    /** The rule's id. */
    public String id() {
        return rule.id();
    }

    /** How heavy it is, at most, for the purposes it was looked for. */
    public Severity severity() {
        return rule.heaviest();
    }

    /** Whether a repair repairs it; of one that was worked out, whether that very repair does. */
    public boolean isRepaired() {
        return fix == Fix.REPAIR;
    }

    /** What was seen and what that means, in whole sentences; not yet safe to show. */
    public String words() {
        return what + " " + rule.meaning();
    }

    /** The same once a repair was worked out, by whether that leaves it. */
    public Finding afterRepair(boolean left) {
        if (!left) {
            return fixedBy(Fix.REPAIR);
        }
        return isRepaired() ? fixedBy(Fix.NOTHING) : this;
    }

    /** The same once it is known what repairs it on this card. */
    public Finding fixedBy(Fix known) {
        return new Finding(rule, where, what, boards, known);
    }
}
