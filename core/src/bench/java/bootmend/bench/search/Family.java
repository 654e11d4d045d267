package bootmend.bench.search;

import bootmend.trial.VoltageAxis;

/**
 * Which boards are drawn, and how their voltage is set. No source: invented, in the range of users' reports.
 *
 * @param board board id
 * @param stock in MHz
 * @param least lowest level of the axis that counts
 * @param most highest
 * @param edge mean of the edge clock at level 0, in MHz
 * @param spread its standard deviation
 * @param lowest bounds of it
 * @param highest bounds of it
 */
enum Family {
    PI4("pi4", VoltageAxis.STEPS, 1500, -4, 6, 1830, 120, 1575, 2200),
    PI5("pi5", VoltageAxis.SHIFT, 2400, 0, 4, 2750, 110, 2500, 3100);

    final String board;
    final VoltageAxis axis;
    final long stock;
    final int least;
    final int most;
    final double edge;
    final double spread;
    final double lowest;
    final double highest;

    Family(
            String board,
            VoltageAxis axis,
            long stock,
            int least,
            int most,
            double edge,
            double spread,
            double lowest,
            double highest) {
        this.board = board;
        this.axis = axis;
        this.stock = stock;
        this.least = least;
        this.most = most;
        this.edge = edge;
        this.spread = spread;
        this.lowest = lowest;
        this.highest = highest;
    }
}
