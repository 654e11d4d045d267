package bootmend.trial;

import bootmend.tuning.TuningTables;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * How hot a board gets, learnt from its own trials.
 *
 * <p>Model: steady temperature rise over ambient = k x V^2 f, with V in volts and f in GHz (the dynamic power law of CMOS
 * logic, P ~ C V^2 f, "CMOS VLSI Design", 4th edition, chapter 5; rise in proportion to power is common practice, no
 * source). k by least squares through zero over the trials with
 * the most V^2 f. Uncertainty: the 95 % prediction interval of that fit, t x s x
 * sqrt(1 + x^2 / sum of x^2) (textbook regression through the origin), where s counts {@value #PRIOR_TRIALS} earlier
 * readings with an error of {@value #PRIOR_ERROR} degC as if they were residuals of it, so that one trial gives an
 * estimate too (no source). A fifth of what the rise grows beyond the hottest trial is added, for leakage grows faster
 * than the model (no source), and it is never less than {@value #LEAST_UNCERTAINTY} degC. Where the volts are known
 * within bounds only, the estimate spans what each bound gives.
 */
public sealed interface HeatEstimate {

    /** Minutes under load from which on a peak counts as steady (common practice, no source). */
    double STEADY_MINUTES = 12;
    /** Minutes after which two thirds of a rise have come, with a slow cooling; what is left is added. No source. */
    double WARMING_MINUTES = 2.7;
    /** Temperatures are read to about this, in degC (common practice, no source). */
    double LEAST_UNCERTAINTY = 1;
    /** How many earlier readings the error of one is known from. */
    int PRIOR_TRIALS = 3;
    /** The error of one reading, in degC. */
    double PRIOR_ERROR = 0.3;
    /** Trials count whose V^2 f is at least this share of the largest: near it the law is nearly straight. No source. */
    double NEAR = 0.85;
    /** Share of a rise beyond the hottest trial that is not sure. */
    double BEYOND = 0.2;

    /** With so many trials near the largest, half of that is enough. No source. */
    int MANY = 4;
    /** One trial alone says little of how heat grows: so many times as much. No source. */
    double ALONE = 1.6;

    /** There is none, and why: a part of a sentence. */
    record Refused(String why) implements HeatEstimate {}

    /**
     * Learnt from a board's trials.
     *
     * @param fits one for each way that the volts may be
     * @param trials n
     */
    record Fitted(List<Fit> fits, int trials) implements HeatEstimate {

        public Fitted {
            fits = List.copyOf(fits);
        }

        /** The peak at a setting, at an ambient temperature in degC. */
        public Peak peak(Setting setting, double ambient) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (Fit fit : fits) {
                double load = fit.load(setting);
                double width = StudentT.quantile(fit.points() - 1 + PRIOR_TRIALS)
                                * fit.residual()
                                * Math.sqrt(1 + load * load / fit.squares())
                        + fit.beyond() * fit.degreesPerUnit() * Math.max(0, load - fit.most());
                low = Math.min(low, fit.degreesPerUnit() * load - width);
                high = Math.max(high, fit.degreesPerUnit() * load + width);
            }
            return new Peak(ambient + (low + high) / 2, Math.max(LEAST_UNCERTAINTY, (high - low) / 2));
        }
    }

    /**
     * A fit under one way that the volts may be.
     *
     * @param volts in V at a setting
     * @param degreesPerUnit k, in degC a V^2 GHz
     * @param residual s, in degC
     * @param squares sum of the squares of V^2 f
     * @param most the largest V^2 f
     * @param points how many trials it is made of
     */
    record Fit(
            ToDoubleFunction<Setting> volts,
            double degreesPerUnit,
            double residual,
            double squares,
            double most,
            int points) {

        /** How unsure a rise beyond the hottest trial is: the more so the fewer trials there are. */
        private double beyond() {
            return caution() * BEYOND;
        }

        private double caution() {
            if (points == 1) {
                return ALONE;
            }
            return points < MANY ? 1 : 0.5;
        }

        double load(Setting setting) {
            return HeatEstimate.load(volts.applyAsDouble(setting), setting.clock());
        }
    }

    /**
     * An estimated peak temperature.
     *
     * @param celsius in degC
     * @param uncertainty half the width of its 95 % interval, in degC
     */
    record Peak(double celsius, double uncertainty) {

        /** The most that it may be. */
        public double most() {
            return celsius + uncertainty;
        }
    }

    /** Learns from those trials that ran hot long enough with the given cooling. */
    static HeatEstimate of(String board, List<Placed> trials, Surroundings surroundings, TuningTables tables) {
        Optional<CoreVolts> volts = CoreVolts.of(board, trials, tables);
        if (volts.isEmpty()) {
            return new Refused("nothing is published on the core voltage of " + board);
        }
        List<Placed> usable = trials.stream()
                .filter(placed -> rise(placed.trial()).isPresent()
                        && placed.trial().surroundings().sameCooling(surroundings))
                .toList();
        return usable.isEmpty()
                ? refused(surroundings)
                : new Fitted(
                        volts.get().ways().stream().map(way -> fit(usable, way)).toList(), usable.size());
    }

    private static Refused refused(Surroundings surroundings) {
        return new Refused("no trial is usable"
                + (surroundings.cooling().isEmpty() ? "" : " with the cooling \"" + surroundings.cooling() + "\"")
                + ": it takes full load for " + (int) STEADY_MINUTES
                + " minutes or more, no throttling, with peak and ambient temperature");
    }

    private static Fit fit(List<Placed> trials, ToDoubleFunction<Setting> volts) {
        List<double[]> all = new ArrayList<>();
        for (Placed placed : trials) {
            double clock = placed.trial().run().clock().orElse(placed.setting().clock());
            all.add(new double[] {
                load(volts.applyAsDouble(placed.setting()), clock),
                rise(placed.trial()).getAsDouble()
            });
        }
        double most = all.stream().mapToDouble(point -> point[0]).max().orElse(0);
        List<double[]> points =
                all.stream().filter(point -> point[0] >= most * NEAR).toList();
        double squares =
                points.stream().mapToDouble(point -> point[0] * point[0]).sum();
        double slope = points.stream().mapToDouble(point -> point[0] * point[1]).sum() / squares;
        double rest = points.stream()
                .mapToDouble(point -> Math.pow(point[1] - slope * point[0], 2))
                .sum();
        double error =
                Math.sqrt((rest + PRIOR_TRIALS * PRIOR_ERROR * PRIOR_ERROR) / (points.size() - 1 + PRIOR_TRIALS));
        return new Fit(volts, slope, error, squares, most, points.size());
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
                && !trial.standing().is(Standing.Kind.THROTTLED);
        if (!steady || run.peak().isEmpty() || trial.surroundings().ambient().isEmpty()) {
            return OptionalDouble.empty();
        }
        double rise = run.peak().getAsDouble() - trial.surroundings().ambient().getAsDouble();
        double come = 1 - Math.exp(-run.minutes().getAsDouble() / WARMING_MINUTES);
        return rise > 0 ? OptionalDouble.of(rise / come) : OptionalDouble.empty();
    }
}
