package bootmend.config;

/**
 * A run of bytes within one line.
 *
 * @param from index of the first byte, counted from 0 at the line's start
 * @param to index after the last byte, at least {@code from}
 */
public record ByteRange(int from, int to) {

    public ByteRange {
        if (from < 0 || to < from) {
            throw new IllegalArgumentException("A byte range cannot run from " + from + " to " + to + ".");
        }
    }

    /** Number of bytes. */
    public int length() {
        return to - from;
    }
}
