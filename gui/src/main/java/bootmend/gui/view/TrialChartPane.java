package bootmend.gui.view;

import bootmend.chart.LegendEntry;
import bootmend.chart.Part;
import bootmend.chart.TrialChart;
import bootmend.config.VisibleText;
import bootmend.gui.model.BoardTrials;
import bootmend.gui.model.ChartWords;
import bootmend.record.ChartView;
import java.util.List;
import java.util.stream.DoubleStream;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Shape;

/** Shows the chart of a board's trials, as large as there is room. */
final class TrialChartPane extends Pane {

    private static final double TEXT_HEIGHT = 16;

    private final TrialChart chart;

    TrialChartPane(Kit kit, BoardTrials board, ChartView view) {
        this.chart = new TrialChart(view, board.report().advice());
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

    /** What each shape and line means. */
    Node legend(Kit kit) {
        FlowPane legend = new FlowPane(16, 4);
        legend.setPrefWrapLength(1);
        legend.setId("trial-legend");
        for (LegendEntry entry : chart.legend()) {
            StackPane place = new StackPane(group(entry.sign()));
            place.setMinWidth(28);
            HBox row = new HBox(5, place, kit.text(entry.words(), "legend-text"));
            row.getStyleClass().add("row");
            legend.getChildren().add(row);
        }
        chart.leftOut().ifPresent(words -> legend.getChildren().add(kit.text(words, "muted")));
        return legend;
    }

    private void draw() {
        getChildren()
                .setAll(chart.plots(getWidth(), getHeight()).stream()
                        .map(TrialChartPane::node)
                        .toList());
    }

    private static Node node(Part part) {
        if (part instanceof Part.Spot spot) {
            Group place = group(spot.parts());
            place.setLayoutX(spot.at().x());
            place.setLayoutY(spot.at().y());
            Tooltip.install(place, new Tooltip(spot.hint()));
            return place;
        }
        Node node = part instanceof Part.Words words ? label(words) : shape(part);
        node.setMouseTransparent(true);
        return node;
    }

    private static Group group(List<Part> parts) {
        Group group = new Group();
        parts.forEach(part -> group.getChildren().add(shape(part)));
        // As wide for a pointer as it looks, though it is hollow.
        group.setPickOnBounds(true);
        return group;
    }

    private static Shape shape(Part part) {
        if (part instanceof Part.Circle circle) {
            return styled(
                    new Circle(circle.centre().x(), circle.centre().y(), circle.radius()),
                    circle.ink().style());
        }
        Part.Line line = (Part.Line) part;
        double[] places = line.points().stream()
                .flatMapToDouble(point -> DoubleStream.of(point.x(), point.y()))
                .toArray();
        return styled(
                line.closed() ? new Polygon(places) : new Polyline(places),
                line.ink().style());
    }

    private static Shape styled(Shape shape, String style) {
        shape.getStyleClass().addAll("chart-shape", style);
        return shape;
    }

    private static Label label(Part.Words words) {
        Label label = new Label(words.text());
        label.getStyleClass().add(words.ink().style());
        label.setAlignment(
                switch (words.align()) {
                    case LEFT -> Pos.CENTER_LEFT;
                    case CENTRE -> Pos.CENTER;
                    case RIGHT -> Pos.CENTER_RIGHT;
                });
        label.setManaged(false);
        label.resizeRelocate(words.from().x(), words.from().y() - TEXT_HEIGHT / 2, words.room(), TEXT_HEIGHT);
        return label;
    }
}
