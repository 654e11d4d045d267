package bootmend.fat;

import java.util.List;

/**
 * A bounded look into a file: its first bytes, and which of a few clusters of it hold nothing but zeros.
 *
 * @param size bytes, as the folder entry has it
 * @param head the first bytes, at most {@value FileSampler#HEAD}
 * @param zeroClusters for each cluster looked at, in the file's order, whether every byte of it is zero
 * @param doubts sentences on what could not be read
 */
public record FileSample(long size, byte[] head, List<Boolean> zeroClusters, List<String> doubts) {

    private static final int LEAST_FOR_TAIL = 4;

    public FileSample {
        head = head.clone();
        zeroClusters = List.copyOf(zeroClusters);
        doubts = List.copyOf(doubts);
    }

    @Override
    public byte[] head() {
        return head.clone();
    }

    /** Whether all that was looked at is zero; false where nothing was. */
    public boolean isAllZero() {
        return !zeroClusters.isEmpty() && zeroClusters.stream().allMatch(zero -> zero);
    }

    /** Whether the file begins with something, but the later half of what was looked at is zero. */
    public boolean hasZeroTail() {
        int looked = zeroClusters.size();
        return looked >= LEAST_FOR_TAIL
                && !zeroClusters.get(0)
                && zeroClusters.subList(looked / 2, looked).stream().allMatch(zero -> zero);
    }
}
