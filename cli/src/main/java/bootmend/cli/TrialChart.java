package bootmend.cli;

import bootmend.config.VisibleText;
import bootmend.job.TrialReport;
import bootmend.trial.Frontier;
import bootmend.trial.LogSummary;
import bootmend.trial.Placed;
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
import java.util.stream.DoubleStream;
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

/**
 * The picture of a board's trials: clock against voltage step, with what held and what failed and the frontier between, and
 * below it clock against peak temperature. The only class, with {@link ChartFile}, that knows the charting library.
 */
final class TrialChart {

    /** The most that {@code temp_limit} can be; source: "Overclocking options", overclocking.adoc, commit 6e5f9446. */
    private static final double LIMIT = 85;
    private static final double MARGIN_MHZ = 60;
    private static final int MOST_STEPS_TICKED = 14;

    private final TrialReport report;
    private final Map<ChartMark, LegendItem> marks = new EnumMap<>(ChartMark.class);

    private TrialChart(TrialReport report) {
        this.report = report;
    }

    /** @param report with at least one trial */
    static JFreeChart of(TrialReport report) {
        return new TrialChart(report).draw();
    }

    private JFreeChart draw() {
        NumberAxis clock = axis("clock (arm_freq), MHz");
        clock.setRange(clocks().min().orElseThrow() - MARGIN_MHZ, clocks().max().orElseThrow() + MARGIN_MHZ);
        CombinedDomainXYPlot both = new CombinedDomainXYPlot(clock);
        both.setGap(18);
        both.add(steps(), 3);
        both.add(heat(), 2);
        both.setFixedLegendItems(legend());
        JFreeChart chart = new JFreeChart(VisibleText.of("Trials of " + report.unit().label()
                + " (" + report.unit().board() + ")"), ChartStyle.TITLE, both, true);
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
        String best = report.advice().best().map(setting -> "Fastest that held: " + setting.words()
                + (report.advice().bestIsKnownGood() ? ", known-good" : ", not known-good yet")).orElse("Nothing held yet");
        TextTitle title = new TextTitle(best + ". The board maker's limits and your local rules come first.",
                ChartStyle.SMALL);
        title.setPaint(ChartStyle.TEXT);
        title.setPadding(new RectangleInsets(2, 0, 8, 0));
        return title;
    }

    private DoubleStream clocks() {
        return report.trials().stream().mapToDouble(trial -> trial.setting().clock());
    }

    private XYPlot steps() {
        NumberAxis axis = axis("voltage step (over_voltage)");
        double low = report.trials().stream().mapToLong(trial -> trial.setting().step()).min().orElse(0);
        axis.setRange(Math.min(0, low) - 1, report.limits().published() + 1.3);
        axis.setTickUnit(new NumberTickUnit(axis.getRange().getLength() > MOST_STEPS_TICKED ? 2 : 1, whole()));
        XYPlot plot = plot(axis, trial -> OptionalDouble.of(trial.setting().step()));
        long free = report.limits().withoutForceTurbo();
        plot.addRangeMarker(limit(free, "above step " + free + ": needs force_turbo, which can void the warranty", true),
                Layer.BACKGROUND);
        long end = report.limits().published();
        plot.addRangeMarker(limit(end, "step " + end + ": end of the published range", true), Layer.BACKGROUND);
        line(plot, 1, held(), ChartStyle.SOLID);
        line(plot, 2, failed(), ChartStyle.DASHED);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
        return plot;
    }

    private XYPlot heat() {
        NumberAxis axis = axis("peak temperature, degC");
        DoubleStream peaks = report.trials().stream().flatMapToDouble(trial -> trial.trial().run().peak().stream());
        double[] sorted = peaks.sorted().toArray();
        double low = sorted.length == 0 ? 40 : Math.min(60, sorted[0] - 5);
        double high = sorted.length == 0 ? 95 : Math.max(95, sorted[sorted.length - 1] + 5);
        axis.setRange(low, high);
        axis.setTickUnit(new NumberTickUnit(high - low > 80 ? 20 : 10, whole()));
        XYPlot plot = plot(axis, trial -> trial.trial().run().peak());
        plot.addRangeMarker(limit(LogSummary.HOT, "80 degC: stay below; from here on the board may slow itself down", false),
                Layer.BACKGROUND);
        plot.addRangeMarker(limit(LIMIT, "85 degC: the board's own limit", true), Layer.BACKGROUND);
        return plot;
    }

    private XYPlot plot(NumberAxis axis, Function<Placed, OptionalDouble> height) {
        Map<ChartMark, XYSeries> series = new EnumMap<>(ChartMark.class);
        for (Placed trial : report.trials()) {
            ChartMark mark = ChartMark.of(trial.trial());
            height.apply(trial).ifPresent(value -> series.computeIfAbsent(mark, key -> new XYSeries(key.words(), false))
                    .add(trial.setting().clock(), value));
        }
        XYSeriesCollection data = new XYSeriesCollection();
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        renderer.setDrawOutlines(true);
        series.forEach((mark, points) -> {
            int index = data.getSeriesCount();
            data.addSeries(points);
            renderer.setSeriesShape(index, mark.shape());
            renderer.setSeriesShapesFilled(index, mark.filled());
            renderer.setSeriesPaint(index, mark.colour());
            renderer.setSeriesOutlineStroke(index, ChartStyle.MARK);
            marks.computeIfAbsent(mark, TrialChart::item);
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
        return plot;
    }

    private static LegendItem item(ChartMark mark) {
        LegendItem item = new LegendItem(mark.words(), null, null, null, true, mark.shape(), mark.filled(), mark.colour(),
                true, mark.colour(), ChartStyle.MARK, false, new Line2D.Double(), ChartStyle.HAIR, mark.colour());
        item.setLabelPaint(ChartStyle.TEXT);
        return item;
    }

    private LegendItemCollection legend() {
        LegendItemCollection items = new LegendItemCollection();
        marks.values().forEach(items::add);
        items.add(lineItem("lowest step that held, at this clock or a higher one", ChartStyle.SOLID));
        items.add(lineItem("highest step that failed, at this clock or a lower one", ChartStyle.DASHED));
        return items;
    }

    private static LegendItem lineItem(String words, Stroke stroke) {
        Shape line = new Line2D.Double(-14, 0, 14, 0);
        LegendItem item = new LegendItem(words, null, null, null, false, line, false, ChartStyle.TEXT, false,
                ChartStyle.TEXT, stroke, true, line, stroke, ChartStyle.TEXT);
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

    /** What holds at a clock holds at every lower one: each height reaches back to the clock before. */
    private XYSeries held() {
        XYSeries line = new XYSeries("held", false);
        double before = clocks().min().orElseThrow() - MARGIN_MHZ;
        for (Frontier.Point point : report.frontier().points()) {
            if (point.held().isPresent()) {
                line.add(before, point.held().get().setting().step());
                line.add(point.clock(), point.held().get().setting().step());
                before = point.clock();
            }
        }
        return line;
    }

    /** What fails at a clock fails at every higher one: each height reaches on to the next clock. */
    private XYSeries failed() {
        XYSeries line = new XYSeries("failed", false);
        List<Frontier.Point> points =
                report.frontier().points().stream().filter(point -> point.failed().isPresent()).toList();
        for (int i = 0; i < points.size(); i++) {
            double step = points.get(i).failed().orElseThrow().setting().step();
            line.add(points.get(i).clock(), step);
            line.add(i + 1 < points.size() ? points.get(i + 1).clock() : clocks().max().orElseThrow() + MARGIN_MHZ, step);
        }
        return line;
    }

    private static ValueMarker limit(double value, String words, boolean above) {
        ValueMarker marker = new ValueMarker(value, ChartStyle.LIMIT, ChartStyle.DOTTED);
        marker.setLabel(words);
        marker.setLabelFont(ChartStyle.SMALL);
        marker.setLabelPaint(ChartStyle.LIMIT);
        marker.setLabelBackgroundColor(new Color(255, 255, 255, 0));
        marker.setLabelAnchor(above ? RectangleAnchor.TOP_LEFT : RectangleAnchor.BOTTOM_LEFT);
        marker.setLabelTextAnchor(above ? TextAnchor.BOTTOM_LEFT : TextAnchor.TOP_LEFT);
        marker.setLabelOffset(new RectangleInsets(3, 6, 3, 6));
        return marker;
    }

    private static NumberAxis axis(String words) {
        NumberAxis axis = new NumberAxis(words);
        axis.setLabelFont(ChartStyle.LABEL);
        axis.setLabelPaint(ChartStyle.TEXT);
        axis.setTickLabelFont(ChartStyle.SMALL);
        axis.setTickLabelPaint(ChartStyle.TEXT);
        axis.setNumberFormatOverride(whole());
        return axis;
    }

    private static DecimalFormat whole() {
        return new DecimalFormat("0", DecimalFormatSymbols.getInstance(Locale.ROOT));
    }
}
