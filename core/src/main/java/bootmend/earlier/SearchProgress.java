package bootmend.earlier;

/** Is told how far a search through free clusters came, and says whether it is to go on. */
@FunctionalInterface
public interface SearchProgress {

    /** Goes through to the end and tells nobody. */
    SearchProgress TO_THE_END = (done, all) -> true;

    /** Leaves it at what is found at once: copies, deleted entries, and what stands near the present file. */
    SearchProgress AT_ONCE = (done, all) -> false;

    /**
     * Called before each read of a piece of the free space.
     *
     * @param done bytes of free space read so far
     * @param all bytes of free space in all
     * @return whether to read on; what was found so far is kept either way
     */
    boolean goOn(long done, long all);
}
