package bootmend.change;

import java.util.Map;

/** What a plan leaves on a card, for tests in other rooms. */
public final class PlanBytes {

    private PlanBytes() {}

    /** Every sector's content after the last step, by place. */
    public static Map<Long, byte[]> after(Plan plan) {
        return plan.contentAfter();
    }
}
