package bootmend.trial;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Adds up the time that the rows of a log stand for, each until the next one.
 *
 * @param seconds time without gaps
 * @param clockSeconds the part of it with a clock
 * @param fullSeconds the part of that at full clock
 * @param megacycles clock in MHz times seconds, over the part with a clock
 * @param gaps number of gaps
 * @param gapSeconds how long they are together
 * @param longestGap the longest of them, in seconds
 */
record LogTime(
        double seconds,
        double clockSeconds,
        double fullSeconds,
        double megacycles,
        int gaps,
        double gapSeconds,
        double longestGap) {

    /** From which on the time between two rows is a gap (common practice, no source): in usual times between rows... */
    private static final double GAP_FACTOR = 3;
    /** ... and at least, in seconds. */
    private static final double GAP_SECONDS = 30;

    /** @param full clock in MHz from which on it is full clock */
    static LogTime of(List<Sample> samples, double full) {
        double limit = gapLimit(samples);
        LogTime time = new LogTime(0, 0, 0, 0, 0, 0, 0);
        for (int i = 0; i + 1 < samples.size(); i++) {
            double step = samples.get(i + 1).seconds() - samples.get(i).seconds();
            time = step > limit
                    ? time.plusGap(step)
                    : time.plus(step, samples.get(i).clock(), full);
        }
        return time;
    }

    private LogTime plusGap(double step) {
        return new LogTime(
                seconds,
                clockSeconds,
                fullSeconds,
                megacycles,
                gaps + 1,
                gapSeconds + step,
                Math.max(longestGap, step));
    }

    private LogTime plus(double step, OptionalDouble clock, double full) {
        if (clock.isEmpty()) {
            return new LogTime(seconds + step, clockSeconds, fullSeconds, megacycles, gaps, gapSeconds, longestGap);
        }
        return new LogTime(
                seconds + step,
                clockSeconds + step,
                fullSeconds + (clock.getAsDouble() >= full ? step : 0),
                megacycles + step * clock.getAsDouble(),
                gaps,
                gapSeconds,
                longestGap);
    }

    /** The value, where some of the time has a clock. */
    OptionalDouble withClock(double value) {
        return clockSeconds > 0 ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    private static double gapLimit(List<Sample> samples) {
        double[] steps = new double[samples.size() - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = samples.get(i + 1).seconds() - samples.get(i).seconds();
        }
        Arrays.sort(steps);
        return steps.length == 0 ? GAP_SECONDS : Math.max(GAP_SECONDS, GAP_FACTOR * steps[steps.length / 2]);
    }
}
