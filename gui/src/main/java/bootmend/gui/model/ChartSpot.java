package bootmend.gui.model;

import bootmend.record.ChartView;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Trials that stand on one spot of a chart.
 *
 * @param value voltage step or degC
 * @param marks how often each mark is there
 */
public record ChartSpot(long clock, double value, Map<ChartView.Mark, Integer> marks) {

    /** More are not drawn. No source: a bound against a folder full of trials. */
    public static final int MOST = 600;

    /** What makes two trials stand on one spot. */
    private record Place(long clock, double value) {}

    /** By clock and voltage step; the newest {@value #MOST} spots. */
    public static List<ChartSpot> bySteps(ChartView chart) {
        return of(chart, false);
    }

    /** By clock and peak temperature, of those trials that have one; the newest {@value #MOST} spots. */
    public static List<ChartSpot> byPeaks(ChartView chart) {
        return of(chart, true);
    }

    private static List<ChartSpot> of(ChartView chart, boolean peaks) {
        Map<Place, Map<ChartView.Mark, Integer>> spots = new LinkedHashMap<>();
        for (int i = chart.points().size() - 1; i >= 0; i--) {
            ChartView.Point point = chart.points().get(i);
            OptionalDouble value = peaks ? point.peak() : OptionalDouble.of(point.step());
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
}
