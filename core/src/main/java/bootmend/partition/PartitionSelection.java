package bootmend.partition;

/** Which partition of a card is meant. */
public sealed interface PartitionSelection {

    /** The one that a board boots from is looked for. */
    record Automatic() implements PartitionSelection {}

    /** @param number as the table counts */
    record ByNumber(int number) implements PartitionSelection {}

    /**
     * The volume that begins there, whatever a table says.
     *
     * @param bytes from the card's start
     */
    record AtOffset(long bytes) implements PartitionSelection {}
}
