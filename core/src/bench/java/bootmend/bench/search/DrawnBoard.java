package bootmend.bench.search;

import java.util.Random;

/**
 * One board drawn from an invented distribution of silicon; its law is not the one that the search takes.
 *
 * <p>Edge clock over voltage: K (V - Vt)^a / V, the alpha-power law of delay (T. Sakurai and A. R. Newton, "Alpha-power law
 * MOSFET model", IEEE Journal of Solid-State Circuits 25(2), 1990; value from memory). Failures near the edge come at a rate
 * that grows e-fold with each width of clock; each run has an edge of its own, for days differ. Power: a V^2 f and leakage,
 * which grows with heat.
 */
final class DrawnBoard {

    private static final double READINGS = 9;

    final Family family;
    final double ambient;
    final Cooling cooling;
    private final double base;
    private final double threshold;
    private final double alpha;
    private final double scale;
    private final double width;
    private final double jitter;
    private final double starts;
    private final double leak;
    private final double supply;

    DrawnBoard(Family family, Cooling cooling, Random random) {
        this.family = family;
        this.cooling = cooling;
        this.ambient = 19 + 8 * random.nextDouble();
        this.base = (family == Family.PI5 ? 0.8 : 0.84) + 0.08 * random.nextDouble();
        this.threshold = 0.33 + 0.1 * random.nextDouble();
        this.alpha = 1 + 0.2 * random.nextDouble();
        double edge =
                Math.max(family.lowest, Math.min(family.highest, family.edge + family.spread * random.nextGaussian()));
        this.scale = edge / law(volts(edge, 0));
        this.width = 8 * Math.exp(0.4 * random.nextGaussian());
        this.jitter = 4;
        this.starts = 50 + 60 * random.nextDouble();
        this.leak = 0.06 + 0.08 * random.nextDouble();
        // One supply in ten gives out below what the board could do.
        this.supply = random.nextInt(10) == 0 ? 1.3 + 0.5 * random.nextDouble() : 100;
    }

    private DrawnBoard(DrawnBoard other, Cooling cooling) {
        this.family = other.family;
        this.cooling = cooling;
        this.ambient = other.ambient;
        this.base = other.base;
        this.threshold = other.threshold;
        this.alpha = other.alpha;
        this.scale = other.scale;
        this.width = other.width;
        this.jitter = other.jitter;
        this.starts = other.starts;
        this.leak = other.leak;
        this.supply = other.supply;
    }

    DrawnBoard cooledBy(Cooling other) {
        return new DrawnBoard(this, other);
    }

    private double law(double volts) {
        return Math.pow(volts - threshold, alpha) / volts;
    }

    private double edge(double level) {
        double clock = family.edge;
        for (int i = 0; i < 40; i++) {
            clock = scale * law(volts(clock, level));
        }
        return clock;
    }

    /** Core voltage, in V; on pi5 it rises with the clock by itself; it stops at 1.0 V there, at 1.1 V on pi4. */
    double volts(double clock, double level) {
        double own = family == Family.PI5 ? base * (0.75 + 0.25 * clock / family.stock) : base;
        return Math.min(family == Family.PI5 ? 1.0 : 1.1, own + 0.025 * level);
    }

    /** Minutes after which a run of at most so many fails; 0 for no boot, more than asked where it holds. */
    double fails(double clock, double level, double minutes, Random random) {
        double above = clock - edge(level) - jitter * random.nextGaussian();
        if (above > starts) {
            return 0;
        }
        double rate = Math.log(2) / 45 * Math.exp(Math.min(40, above / width));
        double time = -Math.log(1 - random.nextDouble()) / rate;
        return time > minutes ? minutes + 1 : Math.max(0.01, time);
    }

    /** The chance that a run of 45 minutes holds. */
    double holds(double clock, double level) {
        double sum = 0;
        for (int i = 0; i < READINGS; i++) {
            double off = (i - (READINGS - 1) / 2) / 2;
            double weight = Math.exp(-off * off / 2);
            double above = clock - edge(level) - jitter * off;
            sum += above > starts ? 0 : weight * Math.exp(-Math.log(2) * Math.exp(Math.min(40, above / width)));
        }
        double weights = 0;
        for (int i = 0; i < READINGS; i++) {
            double off = (i - (READINGS - 1) / 2) / 2;
            weights += Math.exp(-off * off / 2);
        }
        return sum / weights;
    }

    /** Power over that at stock without leakage. */
    private double power(double clock, double level) {
        double stock = volts(family.stock, 0);
        double volts = volts(clock, level);
        return volts * volts * clock / (stock * stock * family.stock);
    }

    boolean isTooMuchForTheSupply(double clock, double level) {
        return power(clock, level) > supply;
    }

    /** The temperature that a long run comes to, in degC; 200 where it runs away. */
    double steady(double clock, double level) {
        double celsius = ambient;
        for (int i = 0; i < 60; i++) {
            double grown = leak * (Math.exp((celsius - 50) / 45) - Math.exp(-0.5));
            celsius = ambient + cooling.riseAtStock() * (power(clock, level) + grown);
            if (celsius > 200) {
                return 200;
            }
        }
        return celsius;
    }

    /** The highest temperature of a run, in degC. */
    double peak(double clock, double level, double minutes) {
        return ambient + (steady(clock, level) - ambient) * (1 - Math.exp(-minutes / cooling.minutes()));
    }

    /** Whether a setting is one to keep: nine of ten runs of 45 minutes hold, at 79 degC or less, within the supply. */
    boolean isGood(long clock, int level) {
        return holds(clock, level) >= 0.9 && steady(clock, level) <= 79 && !isTooMuchForTheSupply(clock, level);
    }

    /** Clock and level of the best: the highest good clock by 25 MHz, and the lowest level there; none where even stock is not good. */
    long[] best() {
        for (long clock = family.stock + 60 * 25; clock >= family.stock; clock -= 25) {
            for (int level = family.least; level <= family.most; level++) {
                if (isGood(clock, level)) {
                    return new long[] {clock, level};
                }
            }
        }
        return new long[] {0, 0};
    }
}
