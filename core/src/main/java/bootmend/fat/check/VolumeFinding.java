package bootmend.fat.check;

/**
 * One thing that is wrong with a volume.
 *
 * @param where a path on the volume, or a sector or region by name
 * @param what a clause on what was found there
 */
public record VolumeFinding(VolumeFault damage, String where, String what) {

    /** {@code 1 cluster}, {@code 3 clusters}. */
    static String count(long n, String thing) {
        return n + " " + thing + (n == 1 ? "" : "s");
    }

    /** The same text for the same damage at the same place, however far it goes. */
    public String key() {
        return damage.id() + " " + where;
    }
}
