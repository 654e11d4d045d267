package bootmend.cli.chart;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.CommandLines;
import bootmend.record.ChartView;
import bootmend.record.TrialAdviseJob;
import bootmend.workplace.Workplace;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.Marker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a chart shows, read back from it, and the help of the trial commands; all in this process. */
class TrialChartTest {

    @TempDir
    private Path home;

    private JFreeChart chart;

    @BeforeEach
    void draw() throws Exception {
        add("1500", "0", "holds", "--full-load", "--minutes", "50", "--mask", "0", "--peak", "55");
        add("1800", "2", "no-boot");
        add("1800", "3", "holds", "--full-load", "--minutes", "20", "--mask", "0", "--peak", "64");
        add("1900", "3", "locks-up", "--peak", "70");
        add("1900", "4", "throttles", "--peak", "83", "--mask", "0x80008");
        chart = TrialChart.of(
                ChartView.of(new TrialAdviseJob(Workplace.ofThisComputer(home)).run("lab-07", OptionalDouble.empty())));
    }

    @Test
    void everyTrialStandsAtItsClockAndStepUnderWordsOfItsOwn() {
        XYDataset steps = plot(0).getDataset(0);

        assertThat(points(steps))
                .containsExactlyInAnyOrder(
                        "known-good: held 45 minutes or more 1500 0",
                        "held, but shorter 1800 3",
                        "failed: no boot 1800 2",
                        "failed: locks up 1900 3",
                        "throttled: heat or supply 1900 4");
        assertThat(points(plot(1).getDataset(0)))
                .containsExactlyInAnyOrder(
                        "known-good: held 45 minutes or more 1500 55",
                        "held, but shorter 1800 64",
                        "failed: locks up 1900 70",
                        "throttled: heat or supply 1900 83");
    }

    @Test
    void theFrontierIsAStairThatNeverGoesDown() {
        assertThat(points(plot(0).getDataset(1)))
                .containsExactly("held 1440 0", "held 1500 0", "held 1500 3", "held 1800 3");
        assertThat(points(plot(0).getDataset(2)))
                .containsExactly("failed 1800 2", "failed 1900 2", "failed 1900 3", "failed 1960 3");
    }

    @Test
    void theLimitsAreLinesWithWords() {
        assertThat(labels(plot(0)))
                .anyMatch(label -> label.contains("above step 6"))
                .anyMatch(label -> label.contains("step 8: end of the published range"));
        assertThat(labels(plot(1)))
                .anyMatch(label -> label.startsWith("80 degC"))
                .anyMatch(label -> label.startsWith("85 degC"));
    }

    @Test
    void everyMarkHasAShapeOfItsOwn() {
        Set<String> shapes = new HashSet<>();
        for (ChartView.Mark kind : ChartView.Mark.values()) {
            ChartMark mark = ChartMark.of(kind);
            Shape shape = mark.shape();
            Rectangle2D box = shape.getBounds2D();
            assertThat(box.getWidth()).isBetween(10.0, 20.0);
            shapes.add(box + " " + mark.filled() + " " + shape.contains(0, 5) + shape.contains(5, 5));
        }

        assertThat(shapes).hasSameSizeAs(ChartView.Mark.values());
    }

    @ParameterizedTest
    @ValueSource(strings = {"add", "list", "import", "advise", "chart", "logger"})
    void everyCommandHasAnExampleInItsHelp(String command) {
        assertThat(run("trial", command, "--help")).contains("Example", "bootmend trial " + command, "--json");
    }

    private XYPlot plot(int index) {
        return ((CombinedDomainXYPlot) chart.getPlot()).getSubplots().get(index);
    }

    private static List<String> points(XYDataset data) {
        List<String> points = new ArrayList<>();
        for (int series = 0; series < data.getSeriesCount(); series++) {
            for (int item = 0; item < data.getItemCount(series); item++) {
                points.add(data.getSeriesKey(series) + " " + Math.round(data.getXValue(series, item)) + " "
                        + Math.round(data.getYValue(series, item)));
            }
        }
        return points;
    }

    private static List<String> labels(XYPlot plot) {
        List<String> labels = new ArrayList<>();
        for (Object marker : plot.getRangeMarkers(Layer.BACKGROUND)) {
            labels.add(((Marker) marker).getLabel());
        }
        return labels;
    }

    private void add(String clock, String step, String outcome, String... more) {
        List<String> command = new ArrayList<>(List.of(
                "trial",
                "add",
                "--label",
                "lab-07",
                "--board",
                "pi4",
                "--set",
                "arm_freq=" + clock,
                "--set",
                "over_voltage=" + step,
                "--outcome",
                outcome));
        command.addAll(Arrays.asList(more));
        assertThat(run(command.toArray(String[]::new))).contains("Kept: ");
    }

    private String run(String... command) {
        StringWriter out = new StringWriter();
        PrintWriter writer = new PrintWriter(out, true);
        assertThat(CommandLines.create(Workplace.ofThisComputer(home), null, writer, writer)
                        .execute(command))
                .isZero();
        return out.toString();
    }
}
