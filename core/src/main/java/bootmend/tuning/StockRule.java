package bootmend.tuning;

/** Where a key's stock value comes from. */
public sealed interface StockRule {

    /** The same value on every board, in the key's unit. */
    record Plain(long value) implements StockRule {}

    /** {@link StockValues} has it, where it is published. */
    record PerBoard() implements StockRule {}

    /** No source publishes it. */
    record NotPublished() implements StockRule {}
}
