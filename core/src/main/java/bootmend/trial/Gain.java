package bootmend.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What more clock brought in one score. Several trials at one clock count with their mean.
 *
 * @param score its name
 * @param baseClock clock that everything is held against, in MHz: the stock where it was measured, else the lowest
 * @param points each higher clock, lowest first
 */
public record Gain(String score, long baseClock, List<Point> points) {

    /** Gain below this share of the added clock no longer pays for its heat (common practice, no source). */
    public static final double PAYS = 0.5;

    public Gain {
        points = List.copyOf(points);
    }

    /**
     * The score at one clock.
     *
     * @param clock in MHz
     * @param gain how far the score rose over that at the base clock; 0.12 = 12 %
     * @param perClock the same over how far the clock rose; 1 = in proportion
     * @param perClockOfLastStep the same from the clock before to this one
     */
    public record Point(long clock, double gain, double perClock, double perClockOfLastStep) {}

    /** One for each score that was measured at two clocks or more, by name. */
    public static List<Gain> of(List<Placed> trials, OptionalLong stockClock) {
        TreeSet<String> names = new TreeSet<>();
        trials.forEach(trial -> names.addAll(trial.trial().scores().keySet()));
        return names.stream()
                .map(name -> of(name, meansByClock(trials, name), stockClock))
                .filter(gain -> !gain.points().isEmpty())
                .toList();
    }

    private static TreeMap<Long, Double> meansByClock(List<Placed> trials, String name) {
        return trials.stream()
                .filter(trial -> trial.trial().scores().containsKey(name))
                .collect(Collectors.groupingBy(
                        trial -> trial.setting().clock(),
                        TreeMap::new,
                        Collectors.averagingDouble(
                                trial -> trial.trial().scores().get(name))));
    }

    private static Gain of(String name, TreeMap<Long, Double> means, OptionalLong stockClock) {
        long base = stockClock.isPresent() && means.containsKey(stockClock.getAsLong())
                ? stockClock.getAsLong()
                : means.firstKey();
        double baseScore = means.get(base);
        List<Point> points = new ArrayList<>();
        double clockBefore = 0;
        double gainBefore = 0;
        for (Map.Entry<Long, Double> entry : means.tailMap(base, false).entrySet()) {
            double clock = (double) entry.getKey() / base - 1;
            double gain = entry.getValue() / baseScore - 1;
            points.add(new Point(entry.getKey(), gain, gain / clock, (gain - gainBefore) / (clock - clockBefore)));
            clockBefore = clock;
            gainBefore = gain;
        }
        return new Gain(name, base, points);
    }

    /**
     * The clock after which no measured step paid any more, in MHz; empty where the last one still did.
     */
    public OptionalLong stoppedPayingAt() {
        int paying = points.size();
        while (paying > 0 && points.get(paying - 1).perClockOfLastStep() < PAYS) {
            paying--;
        }
        if (paying == points.size()) {
            return OptionalLong.empty();
        }
        return OptionalLong.of(paying == 0 ? baseClock : points.get(paying - 1).clock());
    }
}
