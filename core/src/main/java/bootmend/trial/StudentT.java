package bootmend.trial;

/**
 * Student's t: the factor for a two-sided 95 % interval.
 *
 * <p>Source: "e-Handbook of Statistical Methods", 1.3.6.7.2, critical values of Student's t distribution, column 0.975.
 */
final class StudentT {

    private static final double[] QUANTILES = {
        12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228,
        2.201, 2.179, 2.160, 2.145, 2.131, 2.120, 2.110, 2.101, 2.093, 2.086,
        2.080, 2.074, 2.069, 2.064, 2.060, 2.056, 2.052, 2.048, 2.045, 2.042
    };

    private StudentT() {}

    /** @param freedom degrees of freedom, 1 or more; above 30 the factor of 30 is taken, which is a little too wide */
    static double quantile(int freedom) {
        return QUANTILES[Math.min(freedom, QUANTILES.length) - 1];
    }
}
