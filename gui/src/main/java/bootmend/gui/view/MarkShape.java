package bootmend.gui.view;

import bootmend.record.ChartView;
import java.util.Locale;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.SVGPath;
import javafx.scene.shape.Shape;

/** How a trial is drawn around the point 0, 0: each mark has a shape of its own, so that none needs its colour. */
final class MarkShape {

    private MarkShape() {}

    static Node of(ChartView.Mark mark) {
        Group group =
                switch (mark) {
                    case KNOWN_GOOD -> group(filled(new Circle(7)), tick());
                    case HELD -> group(open(new Circle(6)));
                    case NO_BOOT -> group(open(path("M-6,-6 L6,6 M-6,6 L6,-6")));
                    case LOCKS_UP -> group(filled(new Rectangle(-5.5, -5.5, 11, 11)));
                    case MISBEHAVES -> group(open(new Polygon(-7, 6, 7, 6, 0, -7)));
                    case THROTTLED -> group(open(path("M0,-7 L0,7 M-5,2 L0,7 L5,2")));
                    case UNDECIDED -> group(open(new Polygon(0, -5, 5, 0, 0, 5, -5, 0)));
                };
        group.getStyleClass()
                .add("trial-" + mark.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        return group;
    }

    /** What is suggested next. */
    static Node next() {
        Group group = group(open(new Circle(9)), open(path("M-13,0 L-5,0 M5,0 L13,0 M0,-13 L0,-5 M0,5 L0,13")));
        group.getStyleClass().add("trial-next");
        return group;
    }

    private static Node tick() {
        Polyline tick = new Polyline(-3, 0, -1, 3, 3.5, -3);
        tick.getStyleClass().add("shape-tick");
        return tick;
    }

    private static SVGPath path(String content) {
        SVGPath path = new SVGPath();
        path.setContent(content);
        return path;
    }

    private static Shape filled(Shape shape) {
        shape.getStyleClass().add("shape-filled");
        return shape;
    }

    private static Shape open(Shape shape) {
        shape.getStyleClass().add("shape-open");
        return shape;
    }

    private static Group group(Node... nodes) {
        Group group = new Group(nodes);
        // As wide for a pointer as it looks, though it is hollow.
        group.setPickOnBounds(true);
        return group;
    }
}
