package bootmend.chart;

import bootmend.record.ChartView;
import java.util.ArrayList;
import java.util.List;

/** How likely settings are to hold, as shades: the darker the likelier. */
record Bands(List<ChartView.Band> bands) implements Layer {

    private static final List<Ink> INKS =
            List.of(Ink.CHANCE_95, Ink.CHANCE_80, Ink.CHANCE_50, Ink.CHANCE_20, Ink.CHANCE_5);
    private static final double SWATCH = 5;
    private static final double HALF_HEIGHT = 7;

    @Override
    public void draw(Plot plot) {
        for (int i = 0; i < Math.min(INKS.size(), bands.size()); i++) {
            List<Part.Point> around = new ArrayList<>();
            List<ChartView.Edge> edges = bands.get(i).edges();
            for (ChartView.Edge edge : edges) {
                around.add(new Part.Point(plot.x(edge.from()), plot.y(edge.amount())));
            }
            for (int back = edges.size() - 1; back >= 0; back--) {
                around.add(new Part.Point(
                        plot.x(edges.get(back).to()), plot.y(edges.get(back).amount())));
            }
            plot.add(new Part.Line(INKS.get(i), true, around));
        }
    }

    LegendEntry legend() {
        List<Part> sign = new ArrayList<>();
        StringBuilder words = new StringBuilder("chance to hold 45 minutes: ");
        for (int i = 0; i < Math.min(INKS.size(), bands.size()); i++) {
            double left = (i - INKS.size() / 2.0) * SWATCH;
            sign.add(Part.Line.of(
                    INKS.get(i),
                    true,
                    left,
                    -HALF_HEIGHT,
                    left + SWATCH,
                    -HALF_HEIGHT,
                    left + SWATCH,
                    HALF_HEIGHT,
                    left,
                    HALF_HEIGHT));
            words.append(i == 0 ? "" : ", ").append(Math.round(bands.get(i).least() * 100));
        }
        return new LegendEntry(sign, words.append(" % and more").toString());
    }
}
