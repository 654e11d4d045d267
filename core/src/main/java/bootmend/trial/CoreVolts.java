package bootmend.trial;

import bootmend.tuning.TuningTables;
import bootmend.tuning.VoltageControl;
import bootmend.tuning.VoltageScale;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/**
 * What core voltage settings come to, as far as that is published or was measured: some ways it may be, each a voltage in V
 * for a setting. Where a board's own voltage is known only within bounds, there is one way for each bound; where the board
 * scales by itself, one in which its voltage stays and one in which it rises with the clock.
 *
 * @param ways at least one
 */
record CoreVolts(List<ToDoubleFunction<Setting>> ways) {

    private static final double MICROVOLTS = 1e6;

    CoreVolts {
        ways = List.copyOf(ways);
    }

    /** @param trials of one board, on any axis */
    static Optional<CoreVolts> of(String board, List<Placed> trials, TuningTables tables) {
        Optional<VoltageScale> scale = tables.voltageSteps().scale(VoltageAxis.STEPS.key(), board);
        if (scale.isPresent()) {
            double zero = scale.get().microvolts(0).orElseThrow() / MICROVOLTS;
            return Optional.of(new CoreVolts(List.of(setting -> zero + added(setting))));
        }
        Optional<VoltageControl> control = tables.voltageControls().of(board);
        if (control.isEmpty() || control.get().low().isEmpty()) {
            return Optional.empty();
        }
        double top = control.get().top().orElse(Long.MAX_VALUE) / MICROVOLTS;
        double stock = Placement.stockClock(board, tables).orElse(1000);
        Measured measured = Measured.of(trials);
        double low = measured.own(stock).orElse(control.get().low().getAsLong() / MICROVOLTS);
        double high = measured.own(stock).orElse(control.get().high().orElseThrow() / MICROVOLTS);
        List<ToDoubleFunction<Setting>> ways = new ArrayList<>();
        for (double base : low == high ? new double[] {low} : new double[] {low, high}) {
            for (DoubleUnaryOperator rise : measured.rises(base, stock)) {
                ways.add(setting -> {
                    double own = setting.axis() == VoltageAxis.SHIFT ? rise.applyAsDouble(setting.clock()) : base;
                    return Math.min(Math.max(top, own), own + added(setting));
                });
            }
        }
        return Optional.of(new CoreVolts(ways));
    }

    /** What the settings add to the board's own voltage, in V. */
    private static double added(Setting setting) {
        return setting.voltage().level() * VoltageAxis.STEP_MICROVOLTS / MICROVOLTS;
    }

    /**
     * The board's own voltage as measured, without what settings added, in V.
     *
     * @param fixed mean where it was fixed by steps
     * @param clocks in MHz, where the board scaled by itself
     * @param volts at each of them
     */
    private record Measured(OptionalDouble fixed, double[] clocks, double[] volts) {

        /** Clocks that lie this share apart tell how the voltage rises. */
        private static final double APART = 0.08;

        static Measured of(List<Placed> trials) {
            List<Placed> read = trials.stream()
                    .filter(trial -> trial.trial().run().volts().isPresent())
                    .toList();
            List<Placed> scaled = read.stream()
                    .filter(trial -> trial.setting().axis() == VoltageAxis.SHIFT)
                    .toList();
            return new Measured(
                    read.stream()
                            .filter(trial -> trial.setting().axis() == VoltageAxis.STEPS)
                            .mapToDouble(Measured::own)
                            .average(),
                    scaled.stream()
                            .mapToDouble(trial -> trial.setting().clock())
                            .toArray(),
                    scaled.stream().mapToDouble(Measured::own).toArray());
        }

        private static double own(Placed trial) {
            return trial.trial().run().volts().orElseThrow() - added(trial.setting());
        }

        /** At the stock clock; fixed by steps it is the one for default clocks, source: S30 of tuning/sources.csv. */
        OptionalDouble own(double stock) {
            if (fixed.isPresent()) {
                return fixed;
            }
            return volts.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(line().value(stock));
        }

        /** How it may rise with the clock where the board scales by itself. */
        List<DoubleUnaryOperator> rises(double base, double stock) {
            double least = Arrays.stream(clocks).min().orElse(stock);
            double most = Arrays.stream(clocks).max().orElse(stock);
            if (most >= least * (1 + APART)) {
                Line line = line();
                return List.of(line::value);
            }
            return List.of(clock -> base, clock -> base * Math.max(1, clock / stock));
        }

        /** The straight line through what was measured, by least squares; level where all was at one clock. */
        private Line line() {
            double clock = Arrays.stream(clocks).average().orElseThrow();
            double volt = Arrays.stream(volts).average().orElseThrow();
            double across = 0;
            double both = 0;
            for (int i = 0; i < clocks.length; i++) {
                across += (clocks[i] - clock) * (clocks[i] - clock);
                both += (clocks[i] - clock) * (volts[i] - volt);
            }
            return new Line(clock, volt, across > 0 ? both / across : 0);
        }
    }

    private record Line(double clock, double volts, double slope) {

        double value(double at) {
            return volts + slope * (at - clock);
        }
    }
}
