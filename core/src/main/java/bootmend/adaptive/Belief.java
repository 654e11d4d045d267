package bootmend.adaptive;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/** How likely each of many hypotheses is: numbers from 0 to 1 that sum up to 1. */
public final class Belief {

    private final double[] shares;

    private Belief(double[] shares) {
        this.shares = shares;
    }

    /**
     * From weights of any scale.
     *
     * @param weights not negative, at least one above 0
     * @throws IllegalArgumentException if they cannot be shares
     */
    public static Belief of(double... weights) {
        double sum = Arrays.stream(weights).sum();
        if (!(sum > 0) || Double.isInfinite(sum) || Arrays.stream(weights).anyMatch(weight -> weight < 0)) {
            throw new IllegalArgumentException("weights should be 0 or more, and not all of them 0");
        }
        return new Belief(Arrays.stream(weights).map(weight -> weight / sum).toArray());
    }

    /** Every hypothesis as likely as any other. */
    public static Belief even(int hypotheses) {
        double[] weights = new double[hypotheses];
        Arrays.fill(weights, 1);
        return of(weights);
    }

    public int size() {
        return shares.length;
    }

    /** How likely a hypothesis is. */
    public double of(int hypothesis) {
        return shares[hypothesis];
    }

    /** The likeliest hypothesis, the first of several. */
    public int mode() {
        int best = 0;
        for (int i = 1; i < shares.length; i++) {
            if (shares[i] > shares[best]) {
                best = i;
            }
        }
        return best;
    }

    /** The mean of a value over the hypotheses. */
    public double mean(IntToDoubleFunction value) {
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            if (shares[i] > 0) {
                sum += shares[i] * value.applyAsDouble(i);
            }
        }
        return sum;
    }

    /**
     * The same after something was seen, by Bayes' rule.
     *
     * @param chance of what was seen under each hypothesis; where it is 0 under all of them the belief stays as it is
     */
    public Belief after(IntToDoubleFunction chance) {
        double[] weights = new double[shares.length];
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            weights[i] = shares[i] > 0 ? shares[i] * chance.applyAsDouble(i) : 0;
            sum += weights[i];
        }
        return sum > 0 ? of(weights) : this;
    }

    /** Its entropy, in bits: 0 where one hypothesis is sure. */
    public double entropy() {
        return entropy(shares);
    }

    static double entropy(double[] shares) {
        double sum = 0;
        for (double share : shares) {
            if (share > 0) {
                sum -= share * Math.log(share);
            }
        }
        return sum / Math.log(2);
    }
}
