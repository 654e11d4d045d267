package bootmend.trial.search;

import bootmend.trial.VoltageAxis;
import bootmend.tuning.DataFile;
import bootmend.tuning.DataRow;
import java.util.List;
import java.util.Optional;

/**
 * Where a search on a voltage axis looks on some boards, and what is taken for likely before the first trial.
 *
 * @param boards ids
 * @param least lowest voltage level, in grains of the axis
 * @param most highest
 * @param edge clock where half of all runs of 45 minutes hold at level 0, as a share of the stock clock
 * @param spread standard deviation of that
 * @param slope how much that clock rises for a level, as a share of the stock clock
 */
record SearchRange(String key, List<String> boards, int least, int most, double edge, double spread, double slope) {

    private static final double THOUSANDTHS = 1000;

    SearchRange {
        boards = List.copyOf(boards);
    }

    /** How far a search goes on this board and axis; empty where nothing is known of them. */
    static Optional<SearchRange> of(String board, VoltageAxis axis) {
        return DataFile.resource(SearchRange.class, "search-ranges.csv")
                .withColumns("key", "boards", "least", "most", "edge", "spread", "slope")
                .map(row -> range(row), range -> List.of(range.key(), range.boards()))
                .stream()
                .filter(range ->
                        range.key().equals(axis.key()) && range.boards().contains(board))
                .findFirst();
    }

    private static SearchRange range(DataRow row) {
        VoltageAxis axis = row.required("key").equals(VoltageAxis.STEPS.key()) ? VoltageAxis.STEPS : VoltageAxis.SHIFT;
        return new SearchRange(
                axis.key(),
                row.words("boards"),
                (int) (number(row, "least") / axis.grain()),
                (int) (number(row, "most") / axis.grain()),
                number(row, "edge") / THOUSANDTHS,
                number(row, "spread") / THOUSANDTHS,
                number(row, "slope") / THOUSANDTHS);
    }

    private static long number(DataRow row, String column) {
        return row.number(column, row.required(column));
    }

    /** How many levels there are. */
    int levels() {
        return most - least + 1;
    }
}
