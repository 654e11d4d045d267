package bootmend.cli.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Stroke;

/** Fonts, strokes and greys of charts: dark on white, so that print and poor screens keep them. */
final class ChartStyle {

    static final Color TEXT = new Color(0x202020);
    static final Color GRID = new Color(0xD8D8D8);
    static final Color LIMIT = new Color(0x5A3A00);
    static final Font TITLE = new Font(Font.SANS_SERIF, Font.BOLD, 18);
    static final Font LABEL = new Font(Font.SANS_SERIF, Font.PLAIN, 14);
    static final Font SMALL = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
    static final Stroke MARK = new BasicStroke(2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    static final Stroke SOLID = new BasicStroke(2.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);
    static final Stroke DASHED =
            new BasicStroke(1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {7, 5}, 0);
    static final Stroke DOTTED =
            new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {2, 3}, 0);
    static final Stroke HAIR = new BasicStroke(0.8f);

    private ChartStyle() {}
}
