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
 */
record Sample(double seconds, OptionalDouble clock, OptionalDouble volts, OptionalDouble celsius, OptionalLong mask) {}
