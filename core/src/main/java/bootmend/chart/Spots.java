package bootmend.chart;

import bootmend.record.ChartView;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Trials as marks; those on one spot stand beside each other, so that none hides another. */
record Spots(List<ChartSpot> spots, Function<ChartSpot, String> place) implements Layer {

    /** More are not drawn. No source: a bound against a folder full of trials. */
    static final int MOST = 600;

    private static final double BESIDE = 15;
    private static final double COUNT_ROOM = 40;

    /**
     * Trials that stand on one spot of a chart.
     *
     * @param value on the axis that goes up
     * @param marks how often each mark is there
     */
    record ChartSpot(long clock, double value, Map<ChartView.Mark, Integer> marks) {}

    /** What makes two trials stand on one spot. */
    private record Place(long clock, double value) {}

    /** By clock and voltage. */
    static Spots byVoltages(ChartView chart) {
        return new Spots(
                spots(chart, ChartView.Point::amount),
                spot -> spot.clock() + " MHz at " + (long) spot.value() + " ("
                        + chart.voltage().words() + ")");
    }

    /** By clock and peak temperature, of those trials that have one. */
    static Spots byPeaks(ChartView chart) {
        return new Spots(
                spots(chart, ChartView.Point::peak),
                spot -> spot.clock() + " MHz, peak " + Math.round(spot.value() * 10) / 10.0 + " degC");
    }

    /** The newest {@value #MOST}. */
    static List<ChartSpot> spots(ChartView chart, Function<ChartView.Point, OptionalDouble> height) {
        Map<Place, Map<ChartView.Mark, Integer>> spots = new LinkedHashMap<>();
        for (int i = chart.points().size() - 1; i >= 0; i--) {
            ChartView.Point point = chart.points().get(i);
            OptionalDouble value = height.apply(point);
            if (value.isEmpty()) {
                continue;
            }
            Place place = new Place(point.clock(), value.getAsDouble());
            if (spots.size() < MOST || spots.containsKey(place)) {
                spots.computeIfAbsent(place, none -> new EnumMap<>(ChartView.Mark.class))
                        .merge(point.mark(), 1, Integer::sum);
            }
        }
        List<ChartSpot> all = new ArrayList<>();
        spots.forEach((place, marks) -> all.add(new ChartSpot(place.clock(), place.value(), marks)));
        return all;
    }

    @Override
    public void draw(Plot plot) {
        for (ChartSpot spot : spots) {
            String hint = place.apply(spot) + ": "
                    + spot.marks().entrySet().stream()
                            .map(mark ->
                                    mark.getValue() + " \u00d7 " + mark.getKey().words())
                            .collect(Collectors.joining("; "));
            double aside = -(spot.marks().size() - 1) * BESIDE / 2;
            for (Map.Entry<ChartView.Mark, Integer> mark : spot.marks().entrySet()) {
                plot.put(spot.clock(), spot.value(), aside, hint, TrialSign.of(mark.getKey()));
                if (mark.getValue() > 1) {
                    plot.words(
                            Ink.PLOT_TEXT,
                            Part.Align.LEFT,
                            plot.x(spot.clock()) + aside + 9,
                            plot.y(spot.value()) - 7,
                            COUNT_ROOM,
                            "\u00d7" + mark.getValue());
                }
                aside += BESIDE;
            }
        }
    }
}
