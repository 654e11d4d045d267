package bootmend.chart;

import bootmend.record.ChartView;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Another board, or the same under another cooling, drawn thinly beside the one that the chart is of. */
record Beside(ChartView.Other other) implements Layer {

    /** More are not drawn. No source: a bound against a folder full of trials. */
    private static final int MOST = 300;

    @Override
    public void draw(Plot plot) {
        new Stairs(other.failed().corners(), 0, Ink.OTHER_FAILED, Optional.empty()).draw(plot);
        new Stairs(other.held().corners(), 0, Ink.OTHER_HELD, Optional.empty()).draw(plot);
        points(plot, ChartView.Point::amount);
    }

    /** Its peak temperatures, in the lower drawing. */
    void peaks(Plot plot) {
        points(plot, ChartView.Point::peak);
    }

    private void points(Plot plot, Function<ChartView.Point, OptionalDouble> height) {
        List<ChartView.Point> points = other.points().stream()
                .filter(point -> height.apply(point).isPresent())
                .toList();
        for (ChartView.Point point : points.subList(Math.max(0, points.size() - MOST), points.size())) {
            plot.put(
                    point.clock(),
                    height.apply(point).getAsDouble(),
                    0,
                    other.words() + ", " + point.clock() + " MHz: "
                            + point.mark().words(),
                    TrialSign.other(point.mark()));
        }
    }

    List<LegendEntry> legend() {
        return List.of(
                new LegendEntry(TrialSign.line(Ink.OTHER_HELD), other.words() + ": lowest voltage that held"),
                new LegendEntry(TrialSign.line(Ink.OTHER_FAILED), other.words() + ": highest voltage that failed"));
    }
}
