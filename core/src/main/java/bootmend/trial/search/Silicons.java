package bootmend.trial.search;

import bootmend.adaptive.Belief;
import java.util.ArrayList;
import java.util.List;

/**
 * Every board that a search thinks of, and how likely each is before the first trial.
 *
 * @param all in the order of the belief's hypotheses
 */
record Silicons(List<Silicon> all, Belief prior) {

    /** Clock between two edges that are told apart, in MHz at a stock of 1500 MHz. */
    private static final double GRAIN = 12.5 / 1500;

    private static final double[] SLOPES = {-1, -0.5, 0, 0.4, 0.75};
    private static final double SLOPE_SPREAD = 0.5;
    private static final double[] BENDS = {0, 0.04};
    private static final double[] WIDTHS = {3, 6, 12, 24};
    private static final double[] WIDTH_SHARES = {0.2, 0.35, 0.3, 0.15};
    private static final double MOST_SPREADS = 3.2;

    Silicons {
        all = List.copyOf(all);
    }

    static Silicons of(SearchRange range, double stockClock) {
        List<Silicon> all = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        for (double off = -MOST_SPREADS * range.spread(); off <= MOST_SPREADS * range.spread(); off += GRAIN) {
            for (double slope : SLOPES) {
                for (double bend : BENDS) {
                    for (int i = 0; i < WIDTHS.length; i++) {
                        all.add(new Silicon(
                                (range.edge() + off) * stockClock,
                                range.slope() * stockClock * Math.exp(slope),
                                bend,
                                WIDTHS[i]));
                        weights.add(bell(off / range.spread()) * bell(slope / SLOPE_SPREAD) * WIDTH_SHARES[i]);
                    }
                }
            }
        }
        return new Silicons(
                all, Belief.of(weights.stream().mapToDouble(weight -> weight).toArray()));
    }

    private static double bell(double off) {
        return Math.exp(-off * off / 2);
    }

    /** Only those that are still likely enough to matter. */
    Silicons likely(double leastShare) {
        double least = prior.of(prior.mode()) * leastShare;
        List<Silicon> kept = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (prior.of(i) >= least) {
                kept.add(all.get(i));
                weights.add(prior.of(i));
            }
        }
        return new Silicons(
                kept, Belief.of(weights.stream().mapToDouble(weight -> weight).toArray()));
    }

    Silicons after(Observation seen) {
        return new Silicons(all, prior.after(i -> Stability.chance(all.get(i), seen)));
    }
}
