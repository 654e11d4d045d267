package bootmend.record;

import bootmend.trial.Outcome;
import bootmend.trial.Trial;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a chart of a board's trials shows, without how it is drawn: clock against voltage, with what held and what
 * failed and the frontier between, and below it clock against peak temperature.
 *
 * @param title one line on which board it is; its control characters are visible
 * @param subtitle one line on the fastest setting that held
 * @param clock the axis that both drawings share, in MHz
 * @param voltage the upper drawing's other axis, in the unit of the key that sets it
 * @param peak the lower drawing's other axis, in degC
 * @param points one a trial, in the order of the report's trials; several may stand on one spot
 * @param bands how likely settings are to hold 45 minutes, the likeliest first; none where nothing can be said
 * @param next what is suggested next and what would be without it, where it is set in the way of the upper drawing
 * @param other another board, or the same under another cooling, to be compared
 * @param held the lowest voltage that held at each clock or a higher one, as a stair
 * @param failed the highest voltage that failed at each clock or a lower one, as a stair
 * @param voltageLimits across the upper drawing
 * @param peakLimits across the lower drawing
 */
public record ChartView(
        String title,
        String subtitle,
        Axis clock,
        Axis voltage,
        Axis peak,
        List<Point> points,
        List<Band> bands,
        List<Next> next,
        Optional<Other> other,
        Stair held,
        Stair failed,
        List<Limit> voltageLimits,
        List<Limit> peakLimits) {

    public ChartView {
        points = List.copyOf(points);
        bands = List.copyOf(bands);
        next = List.copyOf(next);
        voltageLimits = List.copyOf(voltageLimits);
        peakLimits = List.copyOf(peakLimits);
    }

    /**
     * What a trial counts for on a chart, in the order in which they are drawn: what failed must not vanish behind what
     * held.
     */
    public enum Mark {
        KNOWN_GOOD("known-good: held 45 minutes or more"),
        HELD("held for 15 minutes or more"),
        HELD_SHORT("held, for less than 15 minutes"),
        NO_BOOT("failed: no boot"),
        LOCKS_UP("failed: locks up"),
        MISBEHAVES("failed: misbehaves"),
        THROTTLED("throttled: heat or supply"),
        UNDECIDED("undecided: only booted, or without full load or mask");

        /** Minutes of a short hold. No source. */
        private static final double SHORT = 15;

        private final String words;

        Mark(String words) {
            this.words = words;
        }

        static Mark of(Trial trial) {
            return switch (trial.standing().kind()) {
                case HELD -> hold(trial);
                case THROTTLED -> THROTTLED;
                case UNDECIDED -> UNDECIDED;
                case FAILED -> failure(trial.outcome());
            };
        }

        private static Mark hold(Trial trial) {
            if (trial.isKnownGood()) {
                return KNOWN_GOOD;
            }
            return trial.run().minutes().orElse(0) >= SHORT ? HELD : HELD_SHORT;
        }

        private static Mark failure(Outcome outcome) {
            return switch (outcome) {
                case NO_BOOT -> NO_BOOT;
                case LOCKS_UP -> LOCKS_UP;
                default -> MISBEHAVES;
            };
        }

        /** As a legend says it. */
        public String words() {
            return words;
        }
    }

    /**
     * A trial.
     *
     * @param clock in MHz
     * @param amount voltage, where it is set in the way of the upper drawing; else it is not in that one
     * @param peak highest temperature in degC, where it was measured; without one it is not in the lower drawing
     */
    public record Point(long clock, OptionalDouble amount, OptionalDouble peak, Mark mark) {}

    /**
     * Settings that are about as likely to hold 45 minutes.
     *
     * @param least lowest chance, 0 to 1
     * @param edges from the lowest voltage to the highest
     */
    public record Band(double least, List<Edge> edges) {

        public Band {
            edges = List.copyOf(edges);
        }
    }

    /**
     * From where to where a band goes at a voltage, in MHz.
     */
    public record Edge(double amount, double from, double to) {}

    /**
     * A setting that may be next.
     *
     * @param place 0 for what is suggested, else its place behind
     * @param words the setting in words
     */
    public record Next(long clock, long amount, int place, String words) {}

    /**
     * What is drawn beside for comparison.
     *
     * @param words what it is, as a legend says it
     * @param held the lowest voltage that held, as a stair
     * @param failed the highest that failed, as a stair
     * @param points its trials
     */
    public record Other(String words, Stair held, Stair failed, List<Point> points) {

        public Other {
            points = List.copyOf(points);
        }
    }

    /**
     * A line of level and upright pieces.
     *
     * @param words as a legend says it
     * @param corners from the lowest clock to the highest; none where nothing is known
     */
    public record Stair(String words, List<Corner> corners) {

        public Stair {
            corners = List.copyOf(corners);
        }
    }

    /**
     * Where a stair begins, turns or ends.
     *
     * @param clock in MHz
     */
    public record Corner(long clock, long amount) {}

    /**
     * An axis from {@code low} to {@code high}, which leaves room around what is drawn.
     *
     * @param words quantity and unit
     * @param tick between two numbers; empty where the drawing chooses
     */
    public record Axis(String words, double low, double high, OptionalInt tick) {}

    /**
     * A level line across a drawing.
     *
     * @param value where on the axis
     * @param wordsAbove whether the words stand above the line rather than below it, so that no two lie on each other
     */
    public record Limit(double value, String words, boolean wordsAbove) {}

    /**
     * @param report with at least one trial
     * @throws IllegalArgumentException if it has none
     */
    public static ChartView of(TrialReport report) {
        return new ChartViews(report, Optional.empty()).view();
    }

    /**
     * Two boards, or one under two coolings, in one chart.
     *
     * @param other drawn beside, as far as its voltage is set in the same way
     * @param words what that is
     * @throws IllegalArgumentException if the first has no trial
     */
    public static ChartView compared(TrialReport report, TrialReport other, String words) {
        return new ChartViews(report, Optional.of(new ChartViews.Beside(other, words))).view();
    }

    /** The marks that a legend explains: those of the points, each once, in the marks' order. */
    public List<Mark> marks() {
        return points.stream().map(Point::mark).distinct().sorted().toList();
    }
}
