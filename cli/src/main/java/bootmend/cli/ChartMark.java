package bootmend.cli;

import bootmend.trial.Outcome;
import bootmend.trial.Trial;
import bootmend.trial.Verdict;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * How a trial is drawn. Each mark has a shape of its own, so that none needs its colour to be told from the others, and
 * hollow shapes of different sizes stay visible where several stand on one spot.
 */
enum ChartMark {
    KNOWN_GOOD("known-good: held 45 minutes or more", true, Tint.BLUE) {
        @Override
        Shape shape() {
            return new Ellipse2D.Double(-6, -6, 12, 12);
        }
    },
    HELD("held, but shorter", false, Tint.BLUE) {
        @Override
        Shape shape() {
            return new Ellipse2D.Double(-8, -8, 16, 16);
        }
    },
    NO_BOOT("failed: no boot", false, Tint.VERMILION) {
        @Override
        Shape shape() {
            return lines(-7, -7, 7, 7, Double.NaN, 0, -7, 7, 7, -7);
        }
    },
    LOCKS_UP("failed: locks up", true, Tint.VERMILION) {
        @Override
        Shape shape() {
            return polygon(-7, -6, 7, -6, 0, 7);
        }
    },
    MISBEHAVES("failed: misbehaves", false, Tint.VERMILION) {
        @Override
        Shape shape() {
            return polygon(-8, 7, 8, 7, 0, -8);
        }
    },
    THROTTLED("throttled: heat or supply", false, Tint.BLACK) {
        @Override
        Shape shape() {
            return new Rectangle2D.Double(-9, -9, 18, 18);
        }
    },
    UNDECIDED("undecided: only booted, or without full load or mask", false, Tint.GREY) {
        @Override
        Shape shape() {
            return polygon(0, -6, 6, 0, 0, 6, -6, 0);
        }
    };

    /**
     * Colours that people with any common kind of colour blindness tell apart; source: "Color Universal Design", palette
     * of eight colours, values from memory.
     */
    private static final class Tint {
        private static final Color BLUE = new Color(0x0072B2);
        private static final Color VERMILION = new Color(0xC04A00);
        private static final Color BLACK = new Color(0x202020);
        private static final Color GREY = new Color(0x595959);
    }

    private final String words;
    private final boolean filled;
    private final Color colour;

    ChartMark(String words, boolean filled, Color colour) {
        this.words = words;
        this.filled = filled;
        this.colour = colour;
    }

    static ChartMark of(Trial trial) {
        Verdict verdict = trial.verdict();
        return switch (verdict.kind()) {
            case HELD -> trial.isKnownGood() ? KNOWN_GOOD : HELD;
            case THROTTLED -> THROTTLED;
            case UNDECIDED -> UNDECIDED;
            case FAILED -> failure(trial.outcome());
        };
    }

    private static ChartMark failure(Outcome outcome) {
        return switch (outcome) {
            case NO_BOOT -> NO_BOOT;
            case LOCKS_UP -> LOCKS_UP;
            default -> MISBEHAVES;
        };
    }

    /** Around the point 0, 0, in pixels. */
    abstract Shape shape();

    /** As the legend says it. */
    String words() {
        return words;
    }

    boolean filled() {
        return filled;
    }

    Color colour() {
        return colour;
    }

    private static Shape polygon(double... points) {
        Path2D path = (Path2D) lines(points);
        path.closePath();
        return path;
    }

    /** A line through the points; where an x is no number, the next point begins a new line. */
    private static Shape lines(double... points) {
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
