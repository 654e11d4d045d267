package bootmend.chart;

import java.util.List;

/** A part of a drawing; lengths are pixels, from the upper left corner to the right and down. */
public sealed interface Part {

    /** A place in a drawing. */
    record Point(double x, double y) {}

    /** Straight lines from point to point; a closed one is filled where its ink fills. */
    record Line(Ink ink, boolean closed, List<Point> points) implements Part {

        public Line {
            points = List.copyOf(points);
        }

        /** @param places x and y in turn */
        static Line of(Ink ink, boolean closed, double... places) {
            Point[] points = new Point[places.length / 2];
            for (int i = 0; i < points.length; i++) {
                points[i] = new Point(places[2 * i], places[2 * i + 1]);
            }
            return new Line(ink, closed, List.of(points));
        }
    }

    /** A circle around a point. */
    record Circle(Ink ink, Point centre, double radius) implements Part {}

    /** Where words stand in their room. */
    enum Align {
        LEFT,
        CENTRE,
        RIGHT
    }

    /**
     * Words on one line; their control characters are visible.
     *
     * @param from the left end of their room, at half their height
     * @param room how wide they may be
     */
    record Words(Ink ink, Align align, Point from, double room, String text) implements Part {}

    /**
     * What is pointed at as one, and drawn around the point 0, 0 of its own.
     *
     * @param at where that point is
     * @param hint what it is, in words
     */
    record Spot(Point at, String hint, List<Part> parts) implements Part {

        public Spot {
            parts = List.copyOf(parts);
        }
    }
}
