package bootmend.adaptive;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Chooses the test after which least is expected to be unknown.
 *
 * <p>Source: A. B. Watson, "QUEST+: A general multidimensional Bayesian adaptive psychometric method", Journal of Vision
 * 17(3):10, 2017: the next test is the one whose outcome leaves the least expected entropy. Hypotheses may be put into
 * classes; then the entropy of the classes counts, and what only tells hypotheses of one class apart is worth nothing
 * (nuisance parameters summed out, as that paper suggests; value from memory).
 */
public final class QuestPlus {

    private final Belief belief;
    private final Likelihood likelihood;
    private final int outcomes;
    private final int[] classes;
    private final int count;

    private QuestPlus(Belief belief, Likelihood likelihood, int outcomes, int[] classes, int count) {
        this.belief = belief;
        this.likelihood = likelihood;
        this.outcomes = outcomes;
        this.classes = classes;
        this.count = count;
    }

    /**
     * Every hypothesis counts for itself.
     *
     * @param outcomes how many outcomes a test has
     */
    public static QuestPlus of(Belief belief, Likelihood likelihood, int outcomes) {
        int[] each = IntStream.range(0, belief.size()).toArray();
        return new QuestPlus(belief, likelihood, outcomes, each, each.length);
    }

    /**
     * Hypotheses count by their class.
     *
     * @param classes the class of each hypothesis, from 0 to {@code count} - 1
     */
    public static QuestPlus ofClasses(Belief belief, Likelihood likelihood, int outcomes, int[] classes, int count) {
        return new QuestPlus(belief, likelihood, outcomes, classes.clone(), count);
    }

    public Belief belief() {
        return belief;
    }

    /** What is unknown now, in bits. */
    public double entropy() {
        double[] shares = new double[count];
        for (int i = 0; i < belief.size(); i++) {
            shares[classes[i]] += belief.of(i);
        }
        return Belief.entropy(shares);
    }

    /** What is expected to be unknown after a test, in bits. */
    public double expectedEntropy(int test) {
        double expected = 0;
        double[] shares = new double[count];
        for (int outcome = 0; outcome < outcomes; outcome++) {
            Arrays.fill(shares, 0);
            double sum = 0;
            for (int i = 0; i < belief.size(); i++) {
                if (belief.of(i) > 0) {
                    double weight = belief.of(i) * likelihood.of(test, outcome, i);
                    shares[classes[i]] += weight;
                    sum += weight;
                }
            }
            if (sum > 0) {
                for (int i = 0; i < count; i++) {
                    shares[i] /= sum;
                }
                expected += sum * Belief.entropy(shares);
            }
        }
        return expected;
    }

    /** The test with the least expected entropy, the first of several. */
    public int next(int tests) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int test = 0; test < tests; test++) {
            double expected = expectedEntropy(test);
            if (expected < least) {
                least = expected;
                best = test;
            }
        }
        return best;
    }

    /** After a test came out one way. */
    public QuestPlus after(int test, int outcome) {
        return new QuestPlus(
                belief.after(hypothesis -> likelihood.of(test, outcome, hypothesis)),
                likelihood,
                outcomes,
                classes,
                count);
    }
}
