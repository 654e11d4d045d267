package bootmend.cli.chart;

import bootmend.record.ChartView;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * How a trial is drawn. Each mark has a shape of its own, so that none needs its colour to be told from the others, and
 * hollow shapes of different sizes stay visible where several stand on one spot.
 *
 * @param shape around the point 0, 0, in pixels
 */
record ChartMark(Shape shape, boolean filled, Color colour) {

    /**
     * Colours that people with any common kind of colour blindness tell apart; source: "Color Universal Design",
     * palette of eight colours, values from memory.
     */
    private static final Color BLUE = new Color(0x0072B2);

    private static final Color VERMILION = new Color(0xC04A00);
    private static final Color BLACK = new Color(0x202020);
    private static final Color GREY = new Color(0x595959);

    static ChartMark of(ChartView.Mark mark) {
        return switch (mark) {
            case KNOWN_GOOD -> new ChartMark(new Ellipse2D.Double(-6, -6, 12, 12), true, BLUE);
            case HELD -> new ChartMark(new Ellipse2D.Double(-8, -8, 16, 16), false, BLUE);
            case NO_BOOT -> new ChartMark(lines(-7, -7, 7, 7, Double.NaN, 0, -7, 7, 7, -7), false, VERMILION);
            case LOCKS_UP -> new ChartMark(polygon(-7, -6, 7, -6, 0, 7), true, VERMILION);
            case MISBEHAVES -> new ChartMark(polygon(-8, 7, 8, 7, 0, -8), false, VERMILION);
            case THROTTLED -> new ChartMark(new Rectangle2D.Double(-9, -9, 18, 18), false, BLACK);
            case UNDECIDED -> new ChartMark(polygon(0, -6, 6, 0, 0, 6, -6, 0), false, GREY);
        };
    }

    private static Shape polygon(double... points) {
        Path2D path = lines(points);
        path.closePath();
        return path;
    }

    /** A line through the points; where an x is no number, the next point begins a new line. */
    private static Path2D lines(double... points) {
        Path2D path = new Path2D.Double();
        boolean begin = true;
        for (int i = 0; i < points.length; i += 2) {
            if (Double.isNaN(points[i])) {
                begin = true;
            } else if (begin) {
                path.moveTo(points[i], points[i + 1]);
                begin = false;
            } else {
                path.lineTo(points[i], points[i + 1]);
            }
        }
        return path;
    }
}
