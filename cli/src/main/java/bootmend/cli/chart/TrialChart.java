package bootmend.cli.chart;

import bootmend.record.ChartView;
import java.awt.Color;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** The picture of a board's trials. The only class, with {@link ChartFile}, that knows the charting library. */
final class TrialChart {

    private final ChartView view;

    private TrialChart(ChartView view) {
        this.view = view;
    }

    static JFreeChart of(ChartView view) {
        return new TrialChart(view).draw();
    }

    private JFreeChart draw() {
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(axis(view.clock()));
        both.setGap(18);
        both.add(steps(), 3);
        both.add(heat(), 2);
        both.setFixedLegendItems(legend());
        JFreeChart chart = new JFreeChart(view.title(), ChartStyle.TITLE, both, true);
        chart.setBackgroundPaint(Color.WHITE);
        chart.setPadding(new RectangleInsets(12, 12, 8, 24));
        chart.getTitle().setPaint(ChartStyle.TEXT);
        chart.addSubtitle(0, subtitle());
        chart.getLegend().setItemFont(ChartStyle.SMALL);
        chart.getLegend().setItemPaint(ChartStyle.TEXT);
        chart.getLegend().setFrame(BlockBorder.NONE);
        chart.getLegend().setItemLabelPadding(new RectangleInsets(3, 4, 3, 14));
        return chart;
    }

    private TextTitle subtitle() {
        TextTitle title = new TextTitle(view.subtitle(), ChartStyle.SMALL);
        title.setPaint(ChartStyle.TEXT);
        title.setPadding(new RectangleInsets(2, 0, 8, 0));
        return title;
    }

    private XYPlot steps() {
        XYPlot plot = plot(axis(view.step()), view.stepLimits(), point -> OptionalDouble.of(point.step()));
        line(plot, 1, series("held", view.held()), ChartStyle.SOLID);
        line(plot, 2, series("failed", view.failed()), ChartStyle.DASHED);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
        return plot;
    }

    private XYPlot heat() {
        return plot(axis(view.peak()), view.peakLimits(), ChartView.Point::peak);
    }

    private XYPlot plot(
            NumberAxis axis, List<ChartView.Limit> limits, Function<ChartView.Point, OptionalDouble> height) {
        Map<ChartView.Mark, XYSeries> series = new EnumMap<>(ChartView.Mark.class);
        for (ChartView.Point point : view.points()) {
            height.apply(point)
                    .ifPresent(value -> series.computeIfAbsent(point.mark(), mark -> new XYSeries(mark.words(), false))
                            .add(point.clock(), value));
        }
        XYSeriesCollection data = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        renderer.setDrawOutlines(true);
        series.forEach((kind, points) -> {
            int index = data.getSeriesCount();
            ChartMark mark = ChartMark.of(kind);
            data.addSeries(points);
            renderer.setSeriesShape(index, mark.shape());
            renderer.setSeriesShapesFilled(index, mark.filled());
            renderer.setSeriesPaint(index, mark.colour());
            renderer.setSeriesOutlineStroke(index, ChartStyle.MARK);
        });
        XYPlot plot = new XYPlot(data, null, axis, renderer);
        // The last mark is drawn on top: what failed must not vanish behind what held.
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        plot.setBackgroundPaint(Color.WHITE);
        plot.setDomainGridlinePaint(ChartStyle.GRID);
        plot.setRangeGridlinePaint(ChartStyle.GRID);
        plot.setDomainGridlineStroke(ChartStyle.HAIR);
        plot.setRangeGridlineStroke(ChartStyle.HAIR);
        plot.setOutlinePaint(ChartStyle.TEXT);
        limits.forEach(limit -> plot.addRangeMarker(marker(limit), Layer.BACKGROUND));
        return plot;
    }

    private static LegendItem item(ChartView.Mark kind) {
        ChartMark mark = ChartMark.of(kind);
        LegendItem item = new LegendItem(
                kind.words(),
                null,
                null,
                null,
                true,
                mark.shape(),
                mark.filled(),
                mark.colour(),
                true,
                mark.colour(),
                ChartStyle.MARK,
                false,
                new Line2D.Double(),
                ChartStyle.HAIR,
                mark.colour());
        item.setLabelPaint(ChartStyle.TEXT);
        return item;
    }

    private LegendItemCollection legend() {
        LegendItemCollection items = new LegendItemCollection();
        view.marks().forEach(mark -> items.add(item(mark)));
        items.add(lineItem(view.held().words(), ChartStyle.SOLID));
        items.add(lineItem(view.failed().words(), ChartStyle.DASHED));
        return items;
    }

    private static LegendItem lineItem(String words, Stroke stroke) {
        Shape line = new Line2D.Double(-14, 0, 14, 0);
        LegendItem item = new LegendItem(
                words,
                null,
                null,
                null,
                false,
                line,
                false,
                ChartStyle.TEXT,
                false,
                ChartStyle.TEXT,
                stroke,
                true,
                line,
                stroke,
                ChartStyle.TEXT);
        item.setLabelPaint(ChartStyle.TEXT);
        return item;
    }

    private static void line(XYPlot plot, int index, XYSeries series, Stroke stroke) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setSeriesPaint(0, ChartStyle.TEXT);
        renderer.setSeriesStroke(0, stroke);
        plot.setDataset(index, new XYSeriesCollection(series));
        plot.setRenderer(index, renderer);
    }

    private static XYSeries series(String name, ChartView.Stair stair) {
        XYSeries line = new XYSeries(name, false);
        stair.corners().forEach(corner -> line.add(corner.clock(), corner.step()));
        return line;
    }

    private static ValueMarker marker(ChartView.Limit limit) {
        boolean above = limit.wordsAbove();
        ValueMarker marker = new ValueMarker(limit.value(), ChartStyle.LIMIT, ChartStyle.DOTTED);
        marker.setLabel(limit.words());
        marker.setLabelFont(ChartStyle.SMALL);
        marker.setLabelPaint(ChartStyle.LIMIT);
        marker.setLabelBackgroundColor(new Color(255, 255, 255, 0));
        marker.setLabelAnchor(above ? RectangleAnchor.TOP_LEFT : RectangleAnchor.BOTTOM_LEFT);
        marker.setLabelTextAnchor(above ? TextAnchor.BOTTOM_LEFT : TextAnchor.TOP_LEFT);
        marker.setLabelOffset(new RectangleInsets(3, 6, 3, 6));
        return marker;
    }

    private static NumberAxis axis(ChartView.Axis range) {
        NumberAxis axis = new NumberAxis(range.words());
        axis.setRange(range.low(), range.high());
        axis.setLabelFont(ChartStyle.LABEL);
        axis.setLabelPaint(ChartStyle.TEXT);
        axis.setTickLabelFont(ChartStyle.SMALL);
        axis.setTickLabelPaint(ChartStyle.TEXT);
        axis.setNumberFormatOverride(whole());
        range.tick().ifPresent(tick -> axis.setTickUnit(new NumberTickUnit(tick, whole())));
        return axis;
    }

    private static DecimalFormat whole() {
        return new DecimalFormat("0", DecimalFormatSymbols.getInstance(Locale.ROOT));
    }
}
