package bootmend.fat;

/**
 * One sector's content before and after a change; the arrays are not to be changed.
 *
 * @param offset first byte of the sector
 */
public record SectorChange(SectorKind kind, long offset, byte[] before, byte[] after) {

    public SectorChange {
        if (before.length != after.length || before.length == 0) {
            throw new IllegalArgumentException("a sector keeps its length");
        }
    }

    /** The same change seen from a device on which the volume starts at byte {@code by}. */
    public SectorChange moved(long by) {
        return new SectorChange(kind, Math.addExact(offset, by), before, after);
    }

    /** The change that takes this one back. */
    public SectorChange reversed() {
        return new SectorChange(kind, offset, after, before);
    }
}
