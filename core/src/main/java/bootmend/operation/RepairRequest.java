package bootmend.operation;

/**
 * How a card is repaired.
 *
 * @param freeLost whether clusters that belong to no file are freed
 * @param inPlace whether a config file on a full card may be overwritten where it stands
 */
public record RepairRequest(boolean freeLost, boolean inPlace) {

    /** Nothing freed that may hold a piece of a file. */
    public static final RepairRequest PLAIN = new RepairRequest(false, false);
}
