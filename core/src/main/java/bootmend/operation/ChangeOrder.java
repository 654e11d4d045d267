package bootmend.operation;

import bootmend.NextStep.Allow;
import java.util.EnumSet;
import java.util.Set;

/**
 * A request and the risks that the user takes on for it; without them it is refused where it meets one.
 *
 * @param accepted each refusal names the risk that would let it through
 */
public record ChangeOrder(ChangeRequest request, Set<Allow> accepted) {

    public ChangeOrder {
        accepted = Set.copyOf(accepted);
    }

    /** A request for which no risk is taken. */
    public static ChangeOrder of(ChangeRequest request) {
        return new ChangeOrder(request, Set.of());
    }

    /** The same with one more risk taken. */
    public ChangeOrder accepting(Allow risk) {
        Set<Allow> more = EnumSet.of(risk);
        more.addAll(accepted);
        return new ChangeOrder(request, more);
    }

    /** The same with another request. */
    public ChangeOrder with(ChangeRequest other) {
        return new ChangeOrder(other, accepted);
    }

    public boolean accepts(Allow risk) {
        return accepted.contains(risk);
    }
}
