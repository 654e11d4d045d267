package bootmend.chart;

import bootmend.record.ChartView;
import java.util.List;

/** How a trial is drawn around the point 0, 0: each mark has a shape of its own, so that none needs its colour. */
final class TrialSign {

    private TrialSign() {}

    static List<Part> of(ChartView.Mark mark) {
        return switch (mark) {
            case KNOWN_GOOD ->
                List.of(circle(Ink.TRIAL_KNOWN_GOOD, 7), line(Ink.TRIAL_TICK, false, -3, 0, -1, 3, 3.5, -3));
            case HELD -> List.of(circle(Ink.TRIAL_HELD, 6));
            case HELD_SHORT -> List.of(circle(Ink.TRIAL_HELD, 3.5));
            case NO_BOOT ->
                List.of(line(Ink.TRIAL_NO_BOOT, false, -6, -6, 6, 6), line(Ink.TRIAL_NO_BOOT, false, -6, 6, 6, -6));
            case LOCKS_UP -> List.of(line(Ink.TRIAL_LOCKS_UP, true, -5.5, -5.5, 5.5, -5.5, 5.5, 5.5, -5.5, 5.5));
            case MISBEHAVES -> List.of(line(Ink.TRIAL_MISBEHAVES, true, -7, 6, 7, 6, 0, -7));
            case THROTTLED ->
                List.of(
                        line(Ink.TRIAL_THROTTLED, false, 0, -7, 0, 7),
                        line(Ink.TRIAL_THROTTLED, false, -5, 2, 0, 7, 5, 2));
            case UNDECIDED -> List.of(line(Ink.TRIAL_UNDECIDED, true, 0, -5, 5, 0, 0, 5, -5, 0));
        };
    }

    /** What is suggested next. */
    static List<Part> next() {
        return List.of(
                circle(Ink.TRIAL_NEXT, 9),
                line(Ink.TRIAL_NEXT, false, -13, 0, -5, 0),
                line(Ink.TRIAL_NEXT, false, 5, 0, 13, 0),
                line(Ink.TRIAL_NEXT, false, 0, -13, 0, -5),
                line(Ink.TRIAL_NEXT, false, 0, 5, 0, 13));
    }

    /** What would be next without that. */
    static List<Part> behind() {
        return List.of(circle(Ink.TRIAL_BEHIND, 7));
    }

    /** A trial of what is drawn beside: a ring for what held, a cross for what failed, a dot for the rest. */
    static List<Part> other(ChartView.Mark mark) {
        return switch (mark) {
            case KNOWN_GOOD, HELD, HELD_SHORT -> List.of(circle(Ink.OTHER_TRIAL, 4));
            case NO_BOOT, LOCKS_UP, MISBEHAVES ->
                List.of(line(Ink.OTHER_TRIAL, false, -4, -4, 4, 4), line(Ink.OTHER_TRIAL, false, -4, 4, 4, -4));
            case THROTTLED, UNDECIDED -> List.of(circle(Ink.OTHER_TRIAL, 1.5));
        };
    }

    /** A piece of a line. */
    static List<Part> line(Ink ink) {
        return List.of(line(ink, false, -13, 0, 13, 0));
    }

    private static Part circle(Ink ink, double radius) {
        return new Part.Circle(ink, new Part.Point(0, 0), radius);
    }

    private static Part line(Ink ink, boolean closed, double... places) {
        return Part.Line.of(ink, closed, places);
    }
}
