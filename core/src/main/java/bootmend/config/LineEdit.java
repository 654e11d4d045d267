package bootmend.config;

import com.github.difflib.DiffUtils;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;

/**
 * Lines of a text that stand in the place of others.
 *
 * @param at how many lines of the old text stand before them
 */
public record LineEdit<T>(int at, List<T> old, List<T> changed) {

    /** The fewest edits take steps by the square of the lines that differ; over this, edits that are near do. */
    private static final int MOST_FOR_FEWEST = 10_000;
    /** How many lines ahead, in both texts together, two that are alike are looked for. */
    private static final int AHEAD = 16;

    /**
     * What makes {@code old} into {@code changed}, in order.
     *
     * @param same whether two lines are alike; of a long text, asked at most 160 times a line
     */
    public static <T> List<LineEdit<T>> between(List<T> old, List<T> changed, BiPredicate<T, T> same) {
        if (old.size() + changed.size() > MOST_FOR_FEWEST) {
            return near(old, changed, same);
        }
        return DiffUtils.diff(old, changed, same).getDeltas().stream()
                .map(delta -> new LineEdit<>(
                        delta.getSource().getPosition(),
                        delta.getSource().getLines(),
                        delta.getTarget().getLines()))
                .toList();
    }

    /** Goes through both texts at once; where they part, the nearest lines that are alike end the edit. */
    private static <T> List<LineEdit<T>> near(List<T> old, List<T> changed, BiPredicate<T, T> same) {
        List<LineEdit<T>> edits = new ArrayList<>();
        int i = 0;
        int j = 0;
        while (i < old.size() || j < changed.size()) {
            int from = i;
            int fromChanged = j;
            int skip = skip(old, i, changed, j, same);
            while (skip < 0) {
                i = Math.min(i + 1, old.size());
                j = Math.min(j + 1, changed.size());
                skip = skip(old, i, changed, j, same);
            }
            i += skip / (AHEAD + 1);
            j += skip % (AHEAD + 1);
            if (i > from || j > fromChanged) {
                edits.add(new LineEdit<>(
                        from, List.copyOf(old.subList(from, i)), List.copyOf(changed.subList(fromChanged, j))));
            }
            while (i < old.size() && j < changed.size() && same.test(old.get(i), changed.get(j))) {
                i++;
                j++;
            }
        }
        return edits;
    }

    /** Lines to pass over in each text to the next two that are alike, as one number; -1 where none are near. */
    private static <T> int skip(List<T> old, int i, List<T> changed, int j, BiPredicate<T, T> same) {
        for (int both = 0; both <= AHEAD; both++) {
            int most = Math.min(both, old.size() - i);
            for (int inOld = Math.max(0, both - (changed.size() - j)); inOld <= most; inOld++) {
                int a = i + inOld;
                int b = j + both - inOld;
                boolean ends = a == old.size() && b == changed.size();
                if (ends || a < old.size() && b < changed.size() && same.test(old.get(a), changed.get(b))) {
                    return inOld * (AHEAD + 1) + both - inOld;
                }
            }
        }
        return -1;
    }
}
