package bootmend.record;

import bootmend.config.VisibleText;
import bootmend.trial.Frontier;
import bootmend.trial.LogSummary;
import bootmend.trial.Placed;
import bootmend.trial.Setting;
import bootmend.trial.VoltageAxis;
import java.util.ArrayList;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Makes a chart's view of a report on a board's trials. */
final class ChartViews {

    /** The most that {@code temp_limit} can be; source: "Overclocking options", overclocking.adoc, commit 6e5f9446. */
    private static final double LIMIT = 85;
    /** Room at both ends of the clock axis, in MHz. */
    private static final long MARGIN = 60;

    private static final double SHIFTS_SHOWN = 100_000;
    private static final int MOST_STEPS_TICKED = 14;
    private static final int MOST_DEGREES_TICKED_BY_TEN = 80;

    private final TrialReport report;
    private final Optional<Beside> beside;
    private final List<Placed> all;
    private final long lowest;
    private final long highest;

    /** What is drawn beside, and what it is. */
    record Beside(TrialReport report, String words) {}

    ChartViews(TrialReport report, Optional<Beside> beside) {
        if (report.trials().isEmpty()) {
            throw new IllegalArgumentException("a chart should have at least one trial");
        }
        this.report = report;
        this.beside = beside;
        this.all = Stream.concat(
                        report.trials().stream(), beside.stream().flatMap(other -> other.report().trials().stream()))
                .toList();
        LongSummaryStatistics clocks = Stream.concat(all.stream().map(Placed::setting), suggested())
                .mapToLong(Setting::clock)
                .summaryStatistics();
        this.lowest = clocks.getMin() - MARGIN;
        this.highest = clocks.getMax() + MARGIN;
    }

    ChartView view() {
        ChartView.Axis voltage = voltage();
        return new ChartView(
                VisibleText.of("Trials of " + report.unit().label() + " ("
                        + report.unit().board() + ")"
                        + beside.map(other -> " and " + other.words()).orElse("")),
                subtitle(),
                new ChartView.Axis("clock (arm_freq), MHz", lowest, highest, OptionalInt.empty()),
                voltage,
                peak(),
                points(report),
                report.chances()
                        .map(chances -> new ChanceBands(chances, lowest, highest).of(voltage))
                        .orElse(List.of()),
                next(),
                beside.map(other -> new ChartView.Other(
                        VisibleText.of(other.words()),
                        held(other.report()),
                        failed(other.report()),
                        points(other.report()))),
                held(report),
                failed(report),
                voltageLimits(),
                peakLimits());
    }

    private Stream<Setting> suggested() {
        return Stream.concat(report.advice().setting().stream(), report.advice().behind().stream());
    }

    private List<ChartView.Next> next() {
        List<Setting> settings = new ArrayList<>();
        report.advice().setting().ifPresent(settings::add);
        int first = settings.isEmpty() ? 1 : 0;
        settings.addAll(report.advice().behind());
        List<ChartView.Next> next = new ArrayList<>();
        for (int i = 0; i < settings.size(); i++) {
            Setting setting = settings.get(i);
            if (setting.axis() == report.frontier().axis()) {
                next.add(new ChartView.Next(setting.clock(), setting.voltage().amount(), first + i, setting.words()));
            }
        }
        return next;
    }

    private String subtitle() {
        String standing = report.advice().bestIsKnownGood() ? ", known-good" : ", not known-good yet";
        String best = report.advice()
                .best()
                .map(setting -> "Fastest that held: " + setting.words() + standing)
                .orElse("Nothing held yet");
        return best + ". The board maker's limits and your local rules come first.";
    }

    private ChartView.Axis voltage() {
        VoltageAxis axis = report.frontier().axis();
        LongSummaryStatistics amounts = all.stream()
                .filter(trial -> trial.setting().axis() == axis)
                .mapToLong(trial -> trial.setting().voltage().amount())
                .summaryStatistics();
        double least = amounts.getCount() == 0 ? 0 : Math.min(0, amounts.getMin());
        double most = amounts.getCount() == 0 ? 0 : amounts.getMax();
        double grain = axis.grain();
        double low = least - grain;
        double high = axis == VoltageAxis.STEPS
                ? report.limits().published() + 1.3
                : Math.max(SHIFTS_SHOWN, most) + 1.3 * grain;
        boolean crowded = (high - low) / grain > MOST_STEPS_TICKED;
        return new ChartView.Axis(axis.words(), low, high, OptionalInt.of((crowded ? 2 : 1) * (int) grain));
    }

    private ChartView.Axis peak() {
        double[] peaks = all.stream()
                .flatMapToDouble(trial -> trial.trial().run().peak().stream())
                .sorted()
                .toArray();
        double low = peaks.length == 0 ? 40 : Math.min(60, peaks[0] - 5);
        double high = peaks.length == 0 ? 95 : Math.max(95, peaks[peaks.length - 1] + 5);
        return new ChartView.Axis(
                "peak temperature, degC", low, high, OptionalInt.of(high - low > MOST_DEGREES_TICKED_BY_TEN ? 20 : 10));
    }

    private List<ChartView.Point> points(TrialReport of) {
        return of.trials().stream()
                .map(trial -> new ChartView.Point(
                        trial.setting().clock(),
                        amount(trial),
                        trial.trial().run().peak(),
                        ChartView.Mark.of(trial.trial())))
                .toList();
    }

    private OptionalDouble amount(Placed trial) {
        return trial.setting().axis() == report.frontier().axis()
                ? OptionalDouble.of(trial.setting().voltage().amount())
                : OptionalDouble.empty();
    }

    /** What is known on the axis of the upper drawing. */
    private Frontier frontier(TrialReport of) {
        VoltageAxis axis = report.frontier().axis();
        return of.frontiers().stream()
                .filter(frontier -> frontier.axis() == axis)
                .findFirst()
                .orElse(new Frontier(axis, List.of(), List.of()));
    }

    /** What holds at a clock holds at every lower one: each height reaches back to the clock before. */
    private ChartView.Stair held(TrialReport of) {
        List<ChartView.Corner> corners = new ArrayList<>();
        long before = lowest;
        for (Frontier.Point point : frontier(of).points()) {
            if (point.held().isPresent()) {
                long amount = point.held().get().setting().voltage().amount();
                corners.add(new ChartView.Corner(before, amount));
                corners.add(new ChartView.Corner(point.clock(), amount));
                before = point.clock();
            }
        }
        return new ChartView.Stair("lowest voltage that held, at this clock or a higher one", corners);
    }

    /** What fails at a clock fails at every higher one: each height reaches on to the next clock. */
    private ChartView.Stair failed(TrialReport of) {
        List<ChartView.Corner> corners = new ArrayList<>();
        List<Frontier.Point> points = frontier(of).points().stream()
                .filter(point -> point.failed().isPresent())
                .toList();
        for (int i = 0; i < points.size(); i++) {
            long amount =
                    points.get(i).failed().orElseThrow().setting().voltage().amount();
            corners.add(new ChartView.Corner(points.get(i).clock(), amount));
            corners.add(new ChartView.Corner(
                    i + 1 < points.size() ? points.get(i + 1).clock() : highest, amount));
        }
        return new ChartView.Stair("highest voltage that failed, at this clock or a lower one", corners);
    }

    /** Only steps have a published range. */
    private List<ChartView.Limit> voltageLimits() {
        if (report.frontier().axis() != VoltageAxis.STEPS) {
            return List.of();
        }
        long free = report.limits().withoutForceTurbo();
        long end = report.limits().published();
        return List.of(
                new ChartView.Limit(
                        free, "above step " + free + ": needs force_turbo, which can void the warranty", true),
                new ChartView.Limit(end, "step " + end + ": end of the published range", true));
    }

    private static List<ChartView.Limit> peakLimits() {
        return List.of(
                new ChartView.Limit(
                        LogSummary.HOT, "80 degC: stay below; from here on the board may slow itself down", false),
                new ChartView.Limit(LIMIT, "85 degC: the board's own limit", true));
    }
}
