package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.record.ChartView;
import bootmend.record.TrialReport;
import bootmend.trial.Frontier;
import bootmend.trial.Placed;
import bootmend.trial.search.Advice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Says in words what a chart of trials shows, and what to try next. */
public final class ChartWords {

    /** More are only counted. No source: what can still be listened to. */
    private static final int MOST = 24;

    private final Words words;

    public ChartWords(Words words) {
        this.words = words;
    }

    /** The whole chart, a sentence a piece. */
    public List<String> sentences(BoardTrials board) {
        List<String> all = new ArrayList<>();
        board.chart().ifPresent(chart -> {
            all.add(chart.title() + ". " + chart.subtitle());
            all.add(words.of(
                    "chart.counts",
                    chart.marks().stream()
                            .map(mark -> words.of(
                                    "chart.count",
                                    chart.points().stream()
                                            .filter(point -> point.mark() == mark)
                                            .count(),
                                    mark.words()))
                            .collect(Collectors.joining("; "))));
        });
        List<Frontier.Point> points = board.report().frontiers().stream()
                .flatMap(frontier -> frontier.points().stream())
                .toList();
        points.stream().limit(MOST).map(this::point).forEach(all::add);
        if (points.size() > MOST) {
            all.add(words.of("chart.more", points.size() - MOST));
        }
        board.chart().ifPresent(chart -> {
            chart.voltageLimits()
                    .forEach(limit -> all.add(Character.toUpperCase(
                                    limit.words().charAt(0)) + limit.words().substring(1) + "."));
            List<ChartView.Point> hot = chart.points().stream()
                    .filter(point -> point.peak().isPresent())
                    .toList();
            hot.stream()
                    .max((a, b) ->
                            Double.compare(a.peak().getAsDouble(), b.peak().getAsDouble()))
                    .ifPresent(point ->
                            all.add(words.of("chart.hottest", point.peak().getAsDouble(), point.clock())));
        });
        return all;
    }

    private String point(Frontier.Point point) {
        String failed = point.failed()
                .map(trial -> at("chart.failed", trial, point.clock()))
                .orElse("");
        String held = point.held()
                .map(trial -> at("chart.held", trial, point.clock()))
                .orElse("");
        return words.of(
                "chart.point",
                point.clock(),
                failed.isEmpty() || held.isEmpty() ? failed + held : failed + "; " + held);
    }

    private String at(String key, Placed trial, long clock) {
        long own = trial.setting().clock();
        return words.of(key, trial.setting().voltage().words()) + (own == clock ? "" : words.of("chart.at", own));
    }

    /** What to do next, in a few words. */
    public String next(Advice advice) {
        String setting = advice.setting().map(each -> each.words()).orElse("");
        double minutes = advice.minutes().orElse(0);
        return switch (advice.action()) {
            case TRY -> words.of("next.try", setting, minutes);
            case RUN_LONG -> words.of("next.long", setting, minutes);
            case IMPROVE ->
                setting.isEmpty() ? words.of("next.improve") : words.of("next.improve.run", setting, minutes);
            case STOP -> words.of("next.stop");
        };
    }

    /** What each outcome would lead to. */
    public List<String> outlooks(Advice advice) {
        return advice.outcomes().stream()
                .map(outlook -> words.of("next.outlook", outlook.outcome(), outlook.then()))
                .toList();
    }

    /** How hot that will get, or why nobody knows; empty where nothing is to be run. */
    public Optional<String> peak(Advice advice) {
        if (advice.peak().isPresent()) {
            return Optional.of(words.of(
                    "next.peak",
                    advice.peak().get().celsius(),
                    advice.peak().get().uncertainty()));
        }
        return advice.noPeak().isEmpty() ? Optional.empty() : Optional.of(words.of("next.nopeak", advice.noPeak()));
    }

    public String best(Advice advice) {
        return advice.best()
                .map(setting -> words.of(advice.bestIsKnownGood() ? "next.best" : "next.bestyet", setting.words()))
                .orElseGet(() -> words.of("next.nobest"));
    }

    /** Notes on trials that were left out, put together or contradict each other; the first {@value #MOST}. */
    public List<String> notes(TrialReport report) {
        List<String> all = new ArrayList<>(report.notes());
        report.frontiers().forEach(frontier -> frontier.contradictions().forEach(pair -> all.add(pair.words())));
        List<String> notes = new ArrayList<>(all.subList(0, Math.min(MOST, all.size())));
        if (all.size() > MOST) {
            notes.add(words.of("chart.more", all.size() - MOST));
        }
        return notes;
    }
}
