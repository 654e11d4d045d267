package bootmend.chart;

import bootmend.record.ChartView;
import java.util.ArrayList;
import java.util.List;

/** A drawing between two axes, within a rectangle of the chart; what is drawn is kept in {@link #parts}. */
final class Plot {

    private static final double TEXT_HEIGHT = 16;
    private static final double BETWEEN_NUMBERS = 70;
    private static final double MOST_TICKS = 60;

    /** A rectangle of a chart, in pixels. */
    record Frame(double left, double top, double width, double height) {}

    /** The values that an axis goes from and to. */
    record Range(double low, double high) {}

    private final Frame frame;
    private final Range across;
    private final ChartView.Axis up;
    private final List<Part> parts = new ArrayList<>();

    Plot(Frame frame, Range across, ChartView.Axis up) {
        this.frame = frame;
        this.across = across;
        this.up = up;
    }

    List<Part> parts() {
        return parts;
    }

    ChartView.Axis up() {
        return up;
    }

    double x(double value) {
        return frame.left() + (value - across.low()) / (across.high() - across.low()) * frame.width();
    }

    double y(double value) {
        return frame.top() + (up.high() - value) / (up.high() - up.low()) * frame.height();
    }

    void draw(List<Layer> layers) {
        layers.forEach(layer -> layer.draw(this));
    }

    /** The ground, the grid, the numbers of the axis that goes up, and its name. */
    void frame() {
        rectangle(Ink.PLOT_GROUND, frame.top(), frame.height());
        grid();
        for (double value : levels()) {
            words(Ink.PLOT_TEXT, Part.Align.RIGHT, 0, y(value), frame.left() - 6, number(value));
        }
        words(
                Ink.PLOT_NAME,
                Part.Align.LEFT,
                frame.left(),
                frame.top() - TEXT_HEIGHT / 2 - 3,
                frame.width(),
                up.words());
    }

    /** The grid alone, once more over what would hide it. */
    void grid() {
        for (double value : levels()) {
            level(Ink.PLOT_GRID, value);
        }
        for (double value : ticks()) {
            upright(Ink.PLOT_GRID, value, up.low(), up.high());
        }
    }

    /** The numbers of the axis that goes up; those that would touch each other are left out. */
    private List<Double> levels() {
        double step = up.tick().orElse(1);
        while (step / (up.high() - up.low()) * frame.height() < TEXT_HEIGHT) {
            step *= 2;
        }
        List<Double> levels = new ArrayList<>();
        for (double value = Math.ceil(up.low() / step) * step; value <= up.high(); value += step) {
            levels.add(value);
        }
        return levels;
    }

    /** The numbers and the name of the axis that goes across, below the drawing. */
    void numbersAcross(String name) {
        double below = frame.top() + frame.height();
        for (double value : ticks()) {
            words(
                    Ink.PLOT_TEXT,
                    Part.Align.CENTRE,
                    x(value) - BETWEEN_NUMBERS / 2,
                    below + 3 + TEXT_HEIGHT / 2,
                    BETWEEN_NUMBERS,
                    number(value));
        }
        words(Ink.PLOT_NAME, Part.Align.CENTRE, frame.left(), below + TEXT_HEIGHT * 1.5 + 4, frame.width(), name);
    }

    /** From one value to another, over the whole width. */
    void band(Ink ink, double from, double to) {
        double above = Math.max(frame.top(), y(Math.max(from, to)));
        double below = Math.min(frame.top() + frame.height(), y(Math.min(from, to)));
        if (below > above) {
            rectangle(ink, above, below - above);
        }
    }

    void level(Ink ink, double value) {
        parts.add(Part.Line.of(ink, false, frame.left(), y(value), frame.left() + frame.width(), y(value)));
    }

    /** An upright line from one value to another, as far as the axis goes. */
    void upright(Ink ink, double across, double from, double to) {
        double low = Math.max(up.low(), from);
        double high = Math.min(up.high(), to);
        parts.add(Part.Line.of(ink, false, x(across), y(low), x(across), y(high)));
    }

    /** Words beside a level, from the left edge of the drawing. */
    void levelWords(Ink ink, double value, boolean above, String text) {
        double middle = y(value) + (above ? -1 : 1) * (TEXT_HEIGHT / 2 + 1);
        words(ink, Part.Align.LEFT, frame.left() + 6, middle, frame.width() - 12, text);
    }

    void words(Ink ink, Part.Align align, double left, double middle, double room, String text) {
        parts.add(new Part.Words(ink, align, new Part.Point(left, middle), Math.max(0, room), text));
    }

    /** Puts something that is drawn around 0, 0 at a place. */
    void put(double across, double value, double aside, String hint, List<Part> drawn) {
        parts.add(new Part.Spot(new Part.Point(x(across) + aside, y(value)), hint, drawn));
    }

    void add(Part part) {
        parts.add(part);
    }

    private void rectangle(Ink ink, double top, double height) {
        double right = frame.left() + frame.width();
        parts.add(Part.Line.of(
                ink, true, frame.left(), top, right, top, right, top + height, frame.left(), top + height));
    }

    private List<Double> ticks() {
        double least =
                (across.high() - across.low()) / Math.min(MOST_TICKS, Math.max(1, frame.width() / BETWEEN_NUMBERS));
        double step = Math.pow(10, Math.floor(Math.log10(Math.max(1, least))));
        for (double factor : new double[] {1, 2, 5, 10}) {
            if (step * factor >= least) {
                step *= factor;
                break;
            }
        }
        List<Double> ticks = new ArrayList<>();
        for (double value = Math.ceil(across.low() / step) * step; value <= across.high(); value += step) {
            ticks.add(value);
        }
        return ticks;
    }

    private static String number(double value) {
        return Long.toString(Math.round(value));
    }
}
