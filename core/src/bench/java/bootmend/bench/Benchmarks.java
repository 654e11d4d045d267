package bootmend.bench;

import bootmend.bench.search.SearchBench;
import java.io.IOException;
import java.io.PrintStream;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/**
 * Runs benchmarks by name; the Maven profile {@code bench} starts it.
 *
 * <p>{@code growth} prints the growth tables, {@code search} and {@code search-flaws} what a search for the best setting comes to; anything else is a pattern that picks benchmarks by class and method.
 */
public final class Benchmarks {

    private static final String GROWTH = "growth";
    private static final String SEARCH = "search";
    /** Several, for a fork's compiler may settle on slower code than another's. */
    private static final int FORKS = 3;

    private static final int ROUNDS = 5;
    private static final TimeValue ROUND = TimeValue.seconds(1);

    private Benchmarks() {}

    public static void main(String[] args) throws IOException, RunnerException {
        if (args.length != 1) {
            throw new IllegalArgumentException("Name one benchmark, " + GROWTH + ", or . for all that are timed.");
        }
        if (args[0].startsWith(SEARCH)) {
            SearchBench.run(args[0]);
        } else if (args[0].startsWith(GROWTH)) {
            new Growth(new PrintStream(System.out, true), args[0]).run();
        } else {
            new Runner(new OptionsBuilder()
                            .include(args[0])
                            .forks(FORKS)
                            .warmupIterations(ROUNDS)
                            .warmupTime(ROUND)
                            .measurementIterations(ROUNDS)
                            .measurementTime(ROUND)
                            .timeUnit(TimeUnit.MICROSECONDS)
                            .shouldFailOnError(true)
                            .build())
                    .run();
        }
    }
}
