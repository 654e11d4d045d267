package bootmend.chart;

import bootmend.config.VisibleText;
import bootmend.record.ChartView;
import bootmend.trial.Setting;
import bootmend.trial.search.Advice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The chart of a board's trials: what held and failed by clock and voltage, below it how hot it got, and the trial
 * that is suggested next.
 */
public final class TrialChart {

    private static final double LEFT = 40;
    private static final double RIGHT = 10;
    private static final double NAME = 22;
    private static final double NUMBERS = 42;
    private static final double UPPER = 0.6;
    private static final double ROOM_MHZ = 20;

    private static final int WIDTH = 1000;
    private static final int MARGIN = 24;
    private static final int TITLES = 66;
    private static final int PLOTS = 680;
    private static final int ENTRY = 24;
    private static final int SIGN = 30;

    private final ChartView view;
    private final Advice advice;

    public TrialChart(ChartView view, Advice advice) {
        this.view = view;
        this.advice = advice;
    }

    /**
     * Both plots without a title or a legend, from back to front.
     *
     * @return nothing where there is no room
     */
    public List<Part> plots(double width, double height) {
        double across = width - LEFT - RIGHT;
        double down = height - 2 * NAME - NUMBERS;
        if (across < 1 || down < 1) {
            return List.of();
        }
        Plot steps = new Plot(new Plot.Frame(LEFT, NAME, across, down * UPPER), clocks(), view.voltage());
        Plot peaks = new Plot(
                new Plot.Frame(LEFT, 2 * NAME + down * UPPER, across, down * (1 - UPPER)), clocks(), view.peak());
        steps.draw(stepLayers());
        peaks.draw(peakLayers());
        List<Part> parts = new ArrayList<>(steps.parts());
        parts.addAll(peaks.parts());
        return parts;
    }

    public List<LegendEntry> legend() {
        List<LegendEntry> legend = new ArrayList<>();
        view.marks().forEach(mark -> legend.add(new LegendEntry(TrialSign.of(mark), mark.words())));
        legend.add(new LegendEntry(TrialSign.line(Ink.STAIR_HELD), view.held().words()));
        legend.add(
                new LegendEntry(TrialSign.line(Ink.STAIR_FAILED), view.failed().words()));
        if (!view.bands().isEmpty()) {
            legend.add(new Bands(view.bands()).legend());
        }
        if (advice.setting().isPresent()) {
            legend.add(new LegendEntry(TrialSign.next(), "what is suggested next, below with the estimated peak"));
        }
        if (view.next().stream().anyMatch(next -> next.place() > 0)) {
            legend.add(new LegendEntry(TrialSign.behind(), "what would be next without it"));
        }
        view.other().ifPresent(other -> legend.addAll(new Beside(other).legend()));
        return legend;
    }

    /** Says that not every trial is drawn, where that is so. */
    public Optional<String> leftOut() {
        return Spots.byVoltages(view).spots().size() < Spots.MOST
                ? Optional.empty()
                : Optional.of("Only the newest " + Spots.MOST + " places are drawn.");
    }

    /** The whole chart as a picture of its own, with title and legend; 1000 pixels wide. */
    public Drawing picture() {
        List<Part> parts = new ArrayList<>();
        parts.add(centred(Ink.PLOT_TITLE, 28, view.title()));
        parts.add(centred(Ink.PLOT_TEXT, 52, view.subtitle()));
        parts.add(new Part.Spot(new Part.Point(MARGIN, TITLES), "", plots(WIDTH - 2.0 * MARGIN, PLOTS)));
        int below = TITLES + PLOTS + ENTRY;
        double column = WIDTH / 2.0 - MARGIN;
        List<LegendEntry> legend = legend();
        for (int i = 0; i < legend.size(); i++) {
            double left = MARGIN + i % 2 * column;
            double middle = below + i / 2 * ENTRY;
            parts.add(new Part.Spot(
                    new Part.Point(left + SIGN, middle), "", legend.get(i).sign()));
            parts.add(new Part.Words(
                    Ink.PLOT_TEXT,
                    Part.Align.LEFT,
                    new Part.Point(left + 2 * SIGN, middle),
                    column - 2 * SIGN,
                    legend.get(i).words()));
        }
        int height = below + (legend.size() + 1) / 2 * ENTRY;
        if (leftOut().isPresent()) {
            parts.add(centred(Ink.PLOT_TEXT, height, leftOut().get()));
            height += ENTRY;
        }
        return new Drawing(
                WIDTH,
                height,
                view.title(),
                "Clock against voltage, with what held and what failed; below it, clock against peak temperature. "
                        + view.subtitle(),
                parts);
    }

    private static Part centred(Ink ink, double middle, String text) {
        return new Part.Words(
                ink, Part.Align.CENTRE, new Part.Point(MARGIN, middle), WIDTH - 2.0 * MARGIN, VisibleText.of(text));
    }

    /** The clock axis, made longer where the next trial would stand beyond it. */
    private Plot.Range clocks() {
        double low = view.clock().low();
        double high = view.clock().high();
        for (ChartView.Next next : view.next()) {
            low = Math.min(low, next.clock() - ROOM_MHZ);
            high = Math.max(high, next.clock() + ROOM_MHZ);
        }
        if (advice.setting().isPresent()) {
            low = Math.min(low, advice.setting().get().clock() - ROOM_MHZ);
            high = Math.max(high, advice.setting().get().clock() + ROOM_MHZ);
        }
        return new Plot.Range(low, high);
    }

    private List<Layer> stepLayers() {
        List<ChartView.Limit> limits = view.voltageLimits();
        double free = limits.isEmpty() ? view.voltage().high() : limits.get(0).value();
        double end = limits.isEmpty()
                ? view.voltage().high()
                : limits.get(limits.size() - 1).value();
        double top = Math.max(
                free,
                view.held().corners().stream()
                        .mapToLong(ChartView.Corner::amount)
                        .max()
                        .orElse(0));
        // Shades tell more than the grounds of the stairs, and would not be seen below them.
        Optional<ChartView> plain =
                Optional.of(view).filter(chart -> chart.bands().isEmpty());
        return List.of(
                Plot::frame,
                this::shades,
                plot -> plot.band(Ink.BAND_WARN, free, view.voltage().high()),
                plot -> plot.band(Ink.BAND_WARN, end, view.voltage().high()),
                new Stairs(
                        view.failed().corners(),
                        view.voltage().low(),
                        Ink.STAIR_FAILED,
                        plain.map(ignored -> Ink.GROUND_FAILED)),
                new Stairs(view.held().corners(), top, Ink.STAIR_HELD, plain.map(ignored -> Ink.GROUND_HELD)),
                plot -> view.other().ifPresent(other -> new Beside(other).draw(plot)),
                plot -> limits(plot, view.voltageLimits()),
                this::nextVoltages,
                Spots.byVoltages(view));
    }

    private List<Layer> peakLayers() {
        return List.of(
                Plot::frame,
                plot -> plot.numbersAcross(view.clock().words()),
                plot -> view.peakLimits()
                        .forEach(limit -> plot.band(
                                Ink.BAND_WARN, limit.value(), view.peak().high())),
                plot -> limits(plot, view.peakLimits()),
                this::nextPeak,
                plot -> view.other().ifPresent(other -> new Beside(other).peaks(plot)),
                Spots.byPeaks(view));
    }

    private static void limits(Plot plot, List<ChartView.Limit> limits) {
        for (ChartView.Limit limit : limits) {
            plot.level(Ink.PLOT_LIMIT, limit.value());
            plot.levelWords(Ink.PLOT_LIMIT_TEXT, limit.value(), limit.wordsAbove(), limit.words());
        }
    }

    private void shades(Plot plot) {
        if (!view.bands().isEmpty()) {
            new Bands(view.bands()).draw(plot);
            plot.grid();
        }
    }

    private void nextVoltages(Plot plot) {
        for (ChartView.Next next : view.next()) {
            plot.put(
                    next.clock(),
                    next.amount(),
                    0,
                    (next.place() == 0 ? "suggested next: " : "next without that, place " + next.place() + ": ")
                            + next.words(),
                    next.place() == 0 ? TrialSign.next() : TrialSign.behind());
        }
    }

    private void nextPeak(Plot plot) {
        if (advice.setting().isPresent() && advice.peak().isPresent()) {
            Setting setting = advice.setting().get();
            double peak = advice.peak().get().celsius();
            double range = advice.peak().get().uncertainty();
            plot.upright(Ink.NEXT_RANGE, setting.clock(), peak - range, peak + range);
            next(plot, setting, peak);
        }
    }

    private static void next(Plot plot, Setting setting, double value) {
        plot.put(setting.clock(), value, 0, "suggested next: " + setting.words(), TrialSign.next());
    }
}
