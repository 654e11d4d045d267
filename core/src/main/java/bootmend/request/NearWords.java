package bootmend.request;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Finds the known words that an unknown one may have been meant for. */
public final class NearWords {

    private static final int MOST = 5;
    /** Longer than any known word; a bound on the work for each pair. */
    private static final int LONGEST = 64;

    private final List<String> known;

    public NearWords(List<String> known) {
        this.known = List.copyOf(known);
    }

    /** The nearest first: words that hold the unknown one, and those that differ in less than half its letters. */
    public List<String> to(String unknown) {
        String word = unknown.toLowerCase(Locale.ROOT).substring(0, Math.min(unknown.length(), LONGEST));
        Stream<String> near = known.stream()
                .filter(other -> word.length() > 1 && other.contains(word)
                        || distance(word, other) * 2 < Math.max(2, word.length()));
        return near.sorted(Comparator.comparingInt(other -> distance(word, other)))
                .limit(MOST)
                .toList();
    }

    /** How many letters must be put in, taken out, changed or swapped with the next to turn one word into the other. */
    private static int distance(String left, String right) {
        int[] twoAbove = new int[right.length() + 1];
        int[] above = new int[right.length() + 1];
        for (int j = 0; j <= right.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= left.length(); i++) {
            int[] row = new int[right.length() + 1];
            row[0] = i;
            for (int j = 1; j <= right.length(); j++) {
                int changed = above[j - 1] + (left.charAt(i - 1) == right.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(changed, Math.min(row[j - 1], above[j]) + 1);
                if (i > 1 && j > 1 && isSwap(left, i, right, j)) {
                    row[j] = Math.min(row[j], twoAbove[j - 2] + 1);
                }
            }
            twoAbove = above;
            above = row;
        }
        return above[right.length()];
    }

    private static boolean isSwap(String left, int i, String right, int j) {
        return left.charAt(i - 1) == right.charAt(j - 2) && left.charAt(i - 2) == right.charAt(j - 1);
    }
}
