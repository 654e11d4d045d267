package bootmend.tuning;

/** What a changed clock and voltage mean against stock. */
public final class ClockChange {

    private static final double PERCENT = 100;

    private ClockChange() {}

    /** How far a clock is above its stock value, in percent; below it is negative. Clocks in the same unit, above 0. */
    public static Figure percent(Figure clock, Figure stock) {
        return clock.with(stock, (value, base) -> (value / base - 1) * PERCENT);
    }

    /**
     * Dynamic power against stock: 1 = as stock, 2 = twice as much. Leakage is not in it, so real heat differs.
     *
     * <p>Source: the dynamic power law of CMOS logic, P ~ C V^2 f ("CMOS VLSI Design", 4th edition, chapter 5); the
     * capacitance C is the same on both sides and drops out.
     *
     * @param clock clock, in the same unit as {@code stockClock}
     * @param volts voltage, in the same unit as {@code stockVolts}
     */
    public static Figure powerRatio(Figure clock, Figure stockClock, Figure volts, Figure stockVolts) {
        Figure clockRatio = clock.with(stockClock, (value, base) -> value / base);
        Figure voltageRatio = volts.with(stockVolts, (value, base) -> value / base);
        return clockRatio.with(voltageRatio, (f, v) -> v * v * f);
    }
}
