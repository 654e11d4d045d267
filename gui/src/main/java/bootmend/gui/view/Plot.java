package bootmend.gui.view;

import bootmend.record.ChartView;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.Shape;

/** A drawing between two axes, within a rectangle of the chart in pixels; what it makes is kept in {@link #nodes}. */
final class Plot {

    private static final double TEXT_HEIGHT = 16;
    private static final double BETWEEN_NUMBERS = 70;
    private static final double MOST_TICKS = 60;

    private final double left;
    private final double top;
    private final double width;
    private final double height;
    private final ChartView.Axis up;
    private final double low;
    private final double high;
    private final List<Node> nodes = new ArrayList<>();

    /**
     * @param low lowest clock that is drawn
     * @param high highest clock that is drawn
     */
    Plot(double left, double top, double width, double height, double low, double high, ChartView.Axis up) {
        this.left = left;
        this.top = top;
        this.width = Math.max(1, width);
        this.height = Math.max(1, height);
        this.low = low;
        this.high = high;
        this.up = up;
    }

    List<Node> nodes() {
        return nodes;
    }

    double x(double clock) {
        return left + (clock - low) / (high - low) * width;
    }

    double y(double value) {
        return top + (up.high() - value) / (up.high() - up.low()) * height;
    }

    /** The ground, the grid and the numbers; those of the clock only where {@code clocks} says so. */
    void frame(boolean clocks, String across) {
        Rectangle ground = new Rectangle(left, top, width, height);
        add(ground, "plot-ground");
        double step = up.tick().orElse(1);
        // Numbers that would touch each other are left out.
        while (step / (up.high() - up.low()) * height < TEXT_HEIGHT) {
            step *= 2;
        }
        for (double value = Math.ceil(up.low() / step) * step; value <= up.high(); value += step) {
            add(new Line(left, y(value), left + width, y(value)), "plot-grid");
            text(number(value), 0, y(value) - TEXT_HEIGHT / 2, left - 6, Pos.CENTER_RIGHT, "plot-text");
        }
        double clockStep = clockStep();
        for (double value = Math.ceil(low / clockStep) * clockStep; value <= high; value += clockStep) {
            add(new Line(x(value), top, x(value), top + height), "plot-grid");
            if (clocks) {
                text(number(value), x(value) - 30, top + height + 3, 60, Pos.CENTER, "plot-text");
            }
        }
        text(up.words(), left, top - TEXT_HEIGHT - 3, width, Pos.CENTER_LEFT, "plot-name");
        if (clocks) {
            text(across, left, top + height + TEXT_HEIGHT + 4, width, Pos.CENTER, "plot-name");
        }
    }

    /** A level line with its words. */
    void limit(ChartView.Limit limit) {
        add(new Line(left, y(limit.value()), left + width, y(limit.value())), "plot-limit");
        text(
                limit.words(),
                left + 6,
                y(limit.value()) + (limit.wordsAbove() ? -TEXT_HEIGHT - 1 : 1),
                width - 12,
                Pos.CENTER_LEFT,
                "plot-limit-text");
    }

    /** A tinted band from one value to another. */
    void band(double from, double to, String style) {
        double above = Math.max(top, y(Math.max(from, to)));
        double below = Math.min(top + height, y(Math.min(from, to)));
        if (below > above) {
            add(new Rectangle(left, above, width, below - above), style);
        }
    }

    /** A stair, and the ground between it and a level that it stands for too. */
    void stair(List<ChartView.Corner> corners, double level, String lineStyle, String groundStyle) {
        if (corners.isEmpty()) {
            return;
        }
        List<Double> points = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            boolean turns = i == 0
                    || i == corners.size() - 1
                    || corners.get(i - 1).step() != corners.get(i).step()
                    || corners.get(i + 1).step() != corners.get(i).step();
            if (turns) {
                points.add(x(corners.get(i).clock()));
                points.add(y(corners.get(i).step()));
            }
        }
        Polygon ground = new Polygon();
        ground.getPoints().addAll(points);
        ground.getPoints().addAll(points.get(points.size() - 2), y(level), points.get(0), y(level));
        add(ground, groundStyle);
        Polyline line = new Polyline();
        line.getPoints().addAll(points);
        add(line, lineStyle);
    }

    /** Puts something drawn around 0, 0 at a place. */
    void put(Node node, double clock, double value, double aside) {
        node.setLayoutX(x(clock) + aside);
        node.setLayoutY(y(value));
        nodes.add(node);
    }

    /** An upright line from one value to another. */
    void upright(double clock, double from, double to, String style) {
        add(new Line(x(clock), y(Math.max(up.low(), from)), x(clock), y(Math.min(up.high(), to))), style);
    }

    /** A few words at a place. */
    void text(String words, double x, double y, double room, Pos where, String style) {
        Label label = new Label(words);
        label.getStyleClass().add(style);
        label.setAlignment(where);
        label.setManaged(false);
        label.setMouseTransparent(true);
        label.resizeRelocate(x, y, Math.max(0, room), TEXT_HEIGHT);
        nodes.add(label);
    }

    private void add(Shape shape, String style) {
        shape.getStyleClass().add(style);
        shape.setMouseTransparent(true);
        nodes.add(shape);
    }

    private double clockStep() {
        double least = (high - low) / Math.min(MOST_TICKS, Math.max(1, width / BETWEEN_NUMBERS));
        double step = Math.pow(10, Math.floor(Math.log10(Math.max(1, least))));
        for (double factor : new double[] {1, 2, 5, 10}) {
            if (step * factor >= least) {
                return step * factor;
            }
        }
        return step * 10;
    }

    private static String number(double value) {
        return Long.toString(Math.round(value));
    }
}
