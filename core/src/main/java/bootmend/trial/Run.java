package bootmend.trial;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What was measured while a trial ran.
 *
 * @param minutes how long it ran at the set clock
 * @param fullLoad whether every processor core was kept busy all that time
 * @param peak highest temperature, in degC
 * @param clock clock under load, in MHz
 * @param volts mean core voltage at full clock, in V
 * @param mask throttle report at the end, every bit that was seen; 0 to 0xFFFFFFFF
 */
public record Run(
        OptionalDouble minutes,
        boolean fullLoad,
        OptionalDouble peak,
        OptionalDouble clock,
        OptionalDouble volts,
        OptionalLong mask) {

    /** The highest mask there is. */
    public static final long MAX_MASK = 0xFFFF_FFFFL;

    /** Nothing was measured. */
    public static final Run UNMEASURED = new Run(
            OptionalDouble.empty(), false, OptionalDouble.empty(), OptionalDouble.empty(), OptionalLong.empty());

    /** Without a voltage. */
    public Run(OptionalDouble minutes, boolean fullLoad, OptionalDouble peak, OptionalDouble clock, OptionalLong mask) {
        this(minutes, fullLoad, peak, clock, OptionalDouble.empty(), mask);
    }

    /** @throws IllegalArgumentException with a sentence, if a value is out of range */
    public Run {
        Quantity.MINUTES.check(minutes);
        Quantity.PEAK.check(peak);
        Quantity.CLOCK.check(clock);
        Quantity.VOLTS.check(volts);
        if (mask.isPresent() && (mask.getAsLong() < 0 || mask.getAsLong() > MAX_MASK)) {
            throw new IllegalArgumentException("the throttle mask should be 0x0 to 0xFFFFFFFF");
        }
    }
}
