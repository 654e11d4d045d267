package bootmend.adaptive;

/** How likely each outcome of a test is under each hypothesis. */
@FunctionalInterface
public interface Likelihood {

    /**
     * @param test index of the test
     * @param outcome index of its outcome
     * @param hypothesis index of what is taken to be so
     * @return 0 to 1; over the outcomes of a test it sums up to 1
     */
    double of(int test, int outcome, int hypothesis);
}
