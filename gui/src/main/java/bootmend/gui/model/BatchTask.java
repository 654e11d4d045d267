package bootmend.gui.model;

import bootmend.finding.Purpose;
import bootmend.operation.ChangeOrder;

/** What is done with the cards of a batch, one after the other. */
public sealed interface BatchTask {

    /** Each card is looked at. */
    record Look() implements BatchTask {}

    /** What a request would do is worked out for each card; nothing is written. */
    record WorkOut(ChangeOrder order) implements BatchTask {}

    /** What was worked out is made on each card that it changes. */
    record Make(ChangeOrder order) implements BatchTask {}

    /** Each card is checked. */
    record Check(Purpose purpose) implements BatchTask {}

    /** The word by which this kind of task's texts are found. */
    default String key() {
        if (this instanceof Look) {
            return "look";
        }
        return this instanceof WorkOut ? "workout" : this instanceof Make ? "make" : "check";
    }
}
