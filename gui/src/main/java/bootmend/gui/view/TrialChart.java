package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.gui.model.BoardTrials;
import bootmend.gui.model.ChartSpot;
import bootmend.gui.model.ChartWords;
import bootmend.gui.model.TrialWords;
import bootmend.record.ChartView;
import bootmend.trial.Advice;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.Line;

/** The picture of a board's trials: what held and failed by clock and voltage step, and below it how hot it got. */
final class TrialChart extends Pane {

    private static final double LEFT = 40;
    private static final double RIGHT = 10;
    private static final double NAME = 22;
    private static final double NUMBERS = 42;
    private static final double UPPER = 0.6;
    private static final double BESIDE = 15;
    private static final double ROOM_MHZ = 20;

    private final Kit kit;
    private final ChartView chart;
    private final Advice advice;
    private final List<ChartSpot> steps;
    private final List<ChartSpot> peaks;

    TrialChart(Kit kit, BoardTrials board, ChartView chart) {
        this.kit = kit;
        this.chart = chart;
        this.advice = board.report().advice();
        this.steps = ChartSpot.bySteps(chart);
        this.peaks = ChartSpot.byPeaks(chart);
        setId("trial-chart");
        getStyleClass().add("trial-chart");
        setMinSize(200, 300);
        setPrefHeight(400);
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText(VisibleText.of(String.join(" ", new ChartWords(kit.words()).sentences(board))));
        widthProperty().addListener((observed, before, width) -> draw());
        heightProperty().addListener((observed, before, height) -> draw());
    }

    private void draw() {
        getChildren().clear();
        double width = getWidth() - LEFT - RIGHT;
        double height = getHeight() - 2 * NAME - NUMBERS;
        if (width <= 0 || height <= 0) {
            return;
        }
        OptionalDouble next = advice.setting()
                .map(setting -> OptionalDouble.of(setting.clock()))
                .orElse(OptionalDouble.empty());
        double low = Math.min(chart.clock().low(), next.orElse(chart.clock().low() + ROOM_MHZ) - ROOM_MHZ);
        double high = Math.max(chart.clock().high(), next.orElse(chart.clock().high() - ROOM_MHZ) + ROOM_MHZ);
        Plot upper = new Plot(LEFT, NAME, width, height * UPPER, low, high, chart.step());
        Plot lower = new Plot(LEFT, 2 * NAME + height * UPPER, width, height * (1 - UPPER), low, high, chart.peak());
        steps(upper);
        peaks(lower);
        getChildren().addAll(upper.nodes());
        getChildren().addAll(lower.nodes());
    }

    private void steps(Plot plot) {
        plot.frame(false, "");
        double free = chart.stepLimits().get(0).value();
        plot.band(free, chart.step().high(), "band-warn");
        plot.band(
                chart.stepLimits().get(chart.stepLimits().size() - 1).value(),
                chart.step().high(),
                "band-warn");
        double top = Math.max(
                free,
                chart.held().corners().stream()
                        .mapToLong(ChartView.Corner::step)
                        .max()
                        .orElse(0));
        plot.stair(chart.failed().corners(), chart.step().low(), "stair-failed", "ground-failed");
        plot.stair(chart.held().corners(), top, "stair-held", "ground-held");
        chart.stepLimits().forEach(plot::limit);
        advice.setting().ifPresent(setting -> plot.put(next(), setting.clock(), setting.step(), 0));
        steps.forEach(spot -> put(plot, spot, "chart.spot", Long.toString((long) spot.value())));
    }

    private void peaks(Plot plot) {
        plot.frame(true, chart.clock().words());
        chart.peakLimits()
                .forEach(limit -> plot.band(limit.value(), chart.peak().high(), "band-warn"));
        chart.peakLimits().forEach(plot::limit);
        advice.setting()
                .ifPresent(setting -> advice.peak().ifPresent(peak -> {
                    plot.upright(
                            setting.clock(),
                            peak.celsius() - peak.uncertainty(),
                            peak.celsius() + peak.uncertainty(),
                            "next-range");
                    plot.put(next(), setting.clock(), peak.celsius(), 0);
                }));
        peaks.forEach(spot -> put(plot, spot, "chart.peakspot", TrialWords.number(OptionalDouble.of(spot.value()))));
    }

    private Node next() {
        Node mark = MarkShape.next();
        Tooltip.install(mark, new Tooltip(VisibleText.of(new ChartWords(kit.words()).next(advice))));
        return mark;
    }

    /** Marks on one spot stand beside each other, so that none hides another. */
    private void put(Plot plot, ChartSpot spot, String key, String value) {
        double aside = -(spot.marks().size() - 1) * BESIDE / 2;
        String words = kit.words()
                .of(
                        key,
                        spot.clock(),
                        value,
                        spot.marks().entrySet().stream()
                                .map(each -> kit.words()
                                        .of(
                                                "chart.count",
                                                each.getValue(),
                                                each.getKey().words()))
                                .collect(Collectors.joining("; ")));
        Tooltip tip = new Tooltip(VisibleText.of(words));
        for (Map.Entry<ChartView.Mark, Integer> mark : spot.marks().entrySet()) {
            Node shape = MarkShape.of(mark.getKey());
            Group place = new Group(shape);
            place.setPickOnBounds(true);
            Tooltip.install(place, tip);
            plot.put(place, spot.clock(), spot.value(), aside);
            if (mark.getValue() > 1) {
                plot.text(
                        kit.words().of("chart.times", mark.getValue()),
                        plot.x(spot.clock()) + aside + 9,
                        plot.y(spot.value()) - 15,
                        40,
                        Pos.CENTER_LEFT,
                        "plot-text");
            }
            aside += BESIDE;
        }
    }

    /** What each shape and line means. */
    static Node legend(Kit kit, BoardTrials board, ChartView chart) {
        FlowPane legend = new FlowPane(16, 4);
        legend.setPrefWrapLength(1);
        legend.setId("trial-legend");
        chart.marks().forEach(mark -> legend.getChildren().add(entry(kit, MarkShape.of(mark), mark.words())));
        legend.getChildren()
                .addAll(
                        entry(kit, line("stair-held"), chart.held().words()),
                        entry(kit, line("stair-failed"), chart.failed().words()));
        if (board.report().advice().setting().isPresent()) {
            legend.getChildren().add(entry(kit, MarkShape.next(), kit.words().of("chart.next")));
        }
        int drawn = ChartSpot.bySteps(chart).size();
        if (drawn == ChartSpot.MOST) {
            legend.getChildren().add(kit.text(kit.words().of("chart.newest", drawn), "muted"));
        }
        return legend;
    }

    private static Node line(String style) {
        Line line = new Line(-13, 0, 13, 0);
        line.getStyleClass().add(style);
        return line;
    }

    private static Node entry(Kit kit, Node shape, String words) {
        StackPane place = new StackPane(shape);
        place.setMinWidth(28);
        HBox entry = new HBox(5, place, kit.text(words, "legend-text"));
        entry.getStyleClass().add("row");
        return entry;
    }
}
