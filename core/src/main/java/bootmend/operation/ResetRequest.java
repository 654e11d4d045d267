package bootmend.operation;

import java.util.Set;

/**
 * How a card goes back to stock.
 *
 * @param remove whether lines are taken out rather than commented out
 * @param also keys whose lines are shown only, to be reset as well, such as {@code arm_boost}
 * @param inPlace whether a full card may be overwritten where the file stands
 */
public record ResetRequest(boolean remove, Set<String> also, boolean inPlace) {

    /** Commenting out, and nothing beyond what resets. */
    public static final ResetRequest PLAIN = new ResetRequest(false, Set.of(), false);

    public ResetRequest {
        also = Set.copyOf(also);
    }
}
