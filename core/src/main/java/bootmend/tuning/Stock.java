package bootmend.tuning;

/** A published stock value of a clock on a board, or why there is none. */
public sealed interface Stock {

    /** A value in MHz. */
    record Value(long mhz) implements Stock {}

    /** A value in MHz, and the one it rises to where {@code boostKey=boostValue} is in force. */
    record WithBoost(long mhz, long boostedMhz, String boostKey, long boostValue) implements Stock {}

    /** The key does nothing on this board. */
    record DoesNothing() implements Stock {}

    /** No source publishes a value for this board. */
    record NotPublished() implements Stock {}
}
