package bootmend.check;

/**
 * Something that is wrong with a card's volume or partition table.
 *
 * @param damaged whether files may be hurt or lost by it; else it is a doubt only
 * @param where a path, a sector or a region in words
 * @param what one sentence
 */
public record HealthRemark(boolean damaged, String where, String what) {

    /** Something that is odd, but hurts no file. */
    public static HealthRemark doubt(String where, String what) {
        return new HealthRemark(false, where, what);
    }
}
