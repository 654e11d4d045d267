package bootmend.record;

import bootmend.trial.search.Chances;
import java.util.ArrayList;
import java.util.List;

/**
 * Turns chances into bands of about the same chance.
 *
 * @param chances they fall as the clock rises
 * @param lowest where the clock axis begins, in MHz
 * @param highest where it ends
 */
record ChanceBands(Chances chances, double lowest, double highest) {

    /** Lowest chances of the bands, the likeliest first. */
    static final double[] LEAST = {0.95, 0.8, 0.5, 0.2, 0.05};

    private static final int ROWS = 24;
    private static final int HALVINGS = 9;

    List<ChartView.Band> of(ChartView.Axis voltage) {
        double[][] ends = new double[LEAST.length][ROWS + 1];
        for (int row = 0; row <= ROWS; row++) {
            double from = lowest;
            for (int band = 0; band < LEAST.length; band++) {
                from = end(amount(voltage, row), LEAST[band], from);
                ends[band][row] = from;
            }
        }
        List<ChartView.Band> bands = new ArrayList<>();
        for (int band = 0; band < LEAST.length; band++) {
            List<ChartView.Edge> edges = new ArrayList<>();
            for (int row = 0; row <= ROWS; row++) {
                double from = band == 0 ? lowest : ends[band - 1][row];
                edges.add(new ChartView.Edge(amount(voltage, row), from, ends[band][row]));
            }
            bands.add(new ChartView.Band(LEAST[band], edges));
        }
        return bands;
    }

    private static double amount(ChartView.Axis voltage, int row) {
        return voltage.low() + (voltage.high() - voltage.low()) * row / ROWS;
    }

    /** The highest clock with at least such a chance. */
    private double end(double amount, double least, double from) {
        double low = from;
        double high = highest;
        if (chances.at(high, amount) >= least) {
            return high;
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (chances.at(middle, amount) >= least) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
