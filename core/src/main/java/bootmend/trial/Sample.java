package bootmend.trial;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * One row of a board's log.
 *
 * @param seconds when, counted from whatever moment the log counts from
 * @param clock in MHz
 * @param volts core voltage, in V
 * @param celsius temperature, in degC
 * @param mask throttle report, 0 to 0xFFFFFFFF
 * @param busy share of the processors' time that was busy since the row before, in percent
 */
record Sample(
        double seconds,
        OptionalDouble clock,
        OptionalDouble volts,
        OptionalDouble celsius,
        OptionalLong mask,
        OptionalDouble busy) {

    /** The same, so many seconds later. */
    Sample later(double more) {
        return new Sample(seconds + more, clock, volts, celsius, mask, busy);
    }
}
