package bootmend.tuning;

import java.util.OptionalLong;

/** A published stock value of a key on a board, or why there is none; numbers are in the key's unit. */
public sealed interface Stock {

    /** A value. */
    record Value(long number) implements Stock {}

    /** A value, and the one it rises to where {@code boostKey=boostValue} is in force. */
    record WithBoost(long number, long boosted, String boostKey, long boostValue) implements Stock {}

    /**
     * A value that holds in place of the earlier one on boards with a later boot firmware, or by a later text.
     *
     * @param number empty where the new value is not published
     * @param when what it hangs on, to follow the number
     * @param citation where it is published
     */
    record Changed(OptionalLong number, String when, String citation) implements Stock {}

    /** The key does nothing on this board. */
    record DoesNothing() implements Stock {}

    /** No source publishes a value for this board. */
    record NotPublished() implements Stock {}
}
