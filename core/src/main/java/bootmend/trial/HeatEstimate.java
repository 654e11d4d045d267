package bootmend.trial;

import bootmend.tuning.Figure;
import bootmend.tuning.TuningTables;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How hot a board gets, learnt from its own trials.
 *
 * <p>Model: steady temperature rise over ambient = k x V^2 f, with V in volts and f in GHz (the dynamic power law of CMOS
 * logic, P ~ C V^2 f, "CMOS VLSI Design", 4th edition, chapter 5; rise in proportion to power is common practice, no
 * source). k by least squares through zero over n trials. Uncertainty: the 95 % prediction interval of that fit, t(n-1) x
 * s x sqrt(1 + x^2 / sum of x^2) with s^2 = sum of squared residuals / (n-1) (textbook regression through the origin), and
 * at least {@value #LEAST_UNCERTAINTY} degC. Leakage, which grows with heat and voltage, is not in the model.
 */
public sealed interface HeatEstimate {

    /** Minutes under load from which on a peak counts as steady (common practice, no source). */
    double STEADY_MINUTES = 10;
    /** Temperatures are read to about this, in degC (common practice, no source). */
    double LEAST_UNCERTAINTY = 1;
    /** A line needs more than one point. */
    int FEWEST = 2;

    /** There is none, and why: a part of a sentence. */
    record Refused(String why) implements HeatEstimate {}

    /**
     * Learnt from a board's trials.
     *
     * @param degreesPerUnit k, in degC a V^2 GHz
     * @param residual s, in degC
     * @param squares sum of the squares of V^2 f
     * @param trials n
     */
    record Fitted(double degreesPerUnit, double residual, double squares, int trials, String board, TuningTables tables)
            implements HeatEstimate {

        /** The peak at a setting, at an ambient temperature in degC; refused where the volts are not published. */
        public Peak peak(Setting setting, double ambient) {
            Figure volts = tables.voltageSteps().volts(Placement.VOLTAGE, board, setting.step());
            double load = HeatEstimate.load(((Figure.Value) volts).value(), setting.clock());
            double width = StudentT.quantile(trials - 1) * residual * Math.sqrt(1 + load * load / squares);
            return new Peak(ambient + degreesPerUnit * load, Math.max(LEAST_UNCERTAINTY, width));
        }
    }

    /**
     * An estimated peak temperature.
     *
     * @param celsius in degC
     * @param uncertainty half the width of its 95 % interval, in degC
     */
    record Peak(double celsius, double uncertainty) {}

    /** Learns from those trials that ran hot long enough with the given cooling. */
    static HeatEstimate of(List<Placed> trials, Surroundings surroundings, TuningTables tables) {
        List<double[]> usable = new ArrayList<>();
        String board = "";
        for (Placed placed : trials) {
            board = placed.trial().unit().board();
            Figure volts = tables.voltageSteps()
                    .volts(Placement.VOLTAGE, board, placed.setting().step());
            OptionalDouble rise = rise(placed.trial());
            if (volts instanceof Figure.NotPublished missing) {
                return new Refused(missing.what() + " are not published");
            }
            if (volts instanceof Figure.Value value
                    && rise.isPresent()
                    && placed.trial().surroundings().sameCooling(surroundings)) {
                double clock =
                        placed.trial().run().clock().orElse(placed.setting().clock());
                usable.add(new double[] {load(value.value(), clock), rise.getAsDouble()});
            }
        }
        return usable.size() < FEWEST ? refused(usable.size(), surroundings) : fit(usable, board, tables);
    }

    private static Refused refused(int usable, Surroundings surroundings) {
        return new Refused((usable == 0 ? "no trial" : "one trial") + " is usable"
                + (surroundings.cooling().isEmpty() ? "" : " with the cooling \"" + surroundings.cooling() + "\"")
                + ", and it takes " + FEWEST + ": full load for " + (int) STEADY_MINUTES
                + " minutes or more, no throttling, with peak and ambient temperature");
    }

    private static Fitted fit(List<double[]> points, String board, TuningTables tables) {
        double squares =
                points.stream().mapToDouble(point -> point[0] * point[0]).sum();
        double slope = points.stream().mapToDouble(point -> point[0] * point[1]).sum() / squares;
        double rest = points.stream()
                .mapToDouble(point -> Math.pow(point[1] - slope * point[0], 2))
                .sum();
        return new Fitted(slope, Math.sqrt(rest / (points.size() - 1)), squares, points.size(), board, tables);
    }

    /** V^2 f in V^2 GHz. */
    private static double load(double volts, double clockMhz) {
        return volts * volts * clockMhz / 1000;
    }

    /** Rise over ambient in degC, where the peak is a steady one that no throttling held down. */
    private static OptionalDouble rise(Trial trial) {
        Run run = trial.run();
        boolean steady = run.fullLoad()
                && run.minutes().orElse(0) >= STEADY_MINUTES
                && !trial.verdict().is(Verdict.Kind.THROTTLED);
        if (!steady || run.peak().isEmpty() || trial.surroundings().ambient().isEmpty()) {
            return OptionalDouble.empty();
        }
        double rise = run.peak().getAsDouble() - trial.surroundings().ambient().getAsDouble();
        return rise > 0 ? OptionalDouble.of(rise) : OptionalDouble.empty();
    }
}
