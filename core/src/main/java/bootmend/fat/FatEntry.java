package bootmend.fat;

/** What one entry of the table says about its cluster. */
public sealed interface FatEntry {

    /** The cluster belongs to no file. */
    record Free() implements FatEntry {}

    /** The file goes on in {@code cluster}, which need not lie on the volume. */
    record Next(long cluster) implements FatEntry {}

    /** The cluster is not to be used. */
    record Bad() implements FatEntry {}

    /** The file ends in this cluster. */
    record End() implements FatEntry {}

    /** The entry for the raw value {@code raw}, its reserved upper bits already taken off. */
    static FatEntry of(FatType type, long raw) {
        if (raw == 0) {
            return new Free();
        }
        if (raw >= type.firstEndMark()) {
            return new End();
        }
        return raw == type.badMark() ? new Bad() : new Next(raw);
    }
}
