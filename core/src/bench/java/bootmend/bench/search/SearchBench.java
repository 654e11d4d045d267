package bootmend.bench.search;

import bootmend.trial.Setting;
import bootmend.tuning.TuningTables;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;

/** Follows strategies on many drawn boards and prints what came of them, as rows of a table. */
public final class SearchBench {

    private static final Lab.Flaws NONE = new Lab.Flaws(0, 0);
    private static final Lab.Flaws WRONG = new Lab.Flaws(0.1, 0);
    private static final Lab.Flaws UNLOGGED = new Lab.Flaws(0, 1);
    private static final Lab.Flaws BOTH = new Lab.Flaws(0.1, 0.5);

    private final int boards;
    private final long seed;

    private SearchBench(int boards, long seed) {
        this.boards = boards;
        this.seed = seed;
    }

    /**
     * Prints the table.
     *
     * @param what {@code search} for 1,000 boards each, {@code search-flaws} for 40 each with flaws
     */
    public static void run(String what) {
        if (what.endsWith("flaws")) {
            new SearchBench(40, 2_000_000).flawed();
        } else {
            new SearchBench(1000, 1_000_000).plain();
        }
    }

    private void plain() {
        head();
        for (Family family : Family.values()) {
            for (boolean fan : new boolean[] {true, false}) {
                row(family, fan, new Advised(0), "none", NONE);
                row(family, fan, new Ladder(45), "none", NONE);
                row(family, fan, new Ladder(10), "none", NONE);
                row(family, fan, new Bisection(45), "none", NONE);
            }
        }
    }

    private void flawed() {
        head();
        for (Family family : Family.values()) {
            for (boolean fan : new boolean[] {true, false}) {
                row(family, fan, new Advised(0), "one outcome in ten is told wrong", WRONG);
                row(family, fan, new Advised(0), "no logs", UNLOGGED);
                row(family, fan, new Advised(0), "one in ten wrong, half without a log", BOTH);
                row(family, fan, new Advised(6), "other cooling from the 7th trial on", NONE);
                row(family, fan, new Advised(6), "other cooling, one in ten wrong, half without a log", BOTH);
            }
        }
    }

    private static void head() {
        System.out.println(
                "| board | cooling | way | flaws | near the best | trials | load-hours | over 80 degC | out of range | "
                        + "false known-good | less than even | keeps nothing |");
        System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
    }

    /** What one strategy came to on one board. */
    private record Result(
            boolean near,
            int trials,
            double hours,
            int hot,
            int beyond,
            boolean wrong,
            boolean uneven,
            boolean nothing) {}

    private Result result(Family family, boolean fan, Strategy strategy, Lab.Flaws flaws, long number) {
        Random random = new Random(seed + number);
        DrawnBoard board = null;
        long[] best = {0, 0};
        while (best[0] == 0) {
            board = new DrawnBoard(family, fan ? Cooling.fan(random) : Cooling.plain(random), random);
            best = board.best();
        }
        Lab lab = new Lab(board, TABLES, random, flaws);
        Optional<Setting> kept = strategy.keep(lab);
        best = lab.board.best();
        boolean near = kept.isPresent()
                && Math.abs(kept.get().clock() - best[0]) <= 25
                && Math.abs(kept.get().voltage().level() - best[1]) <= 1;
        boolean uneven = kept.isPresent()
                && lab.board.holds(kept.get().clock(), kept.get().voltage().level()) < 0.5;
        // More than a step beyond what is good: not even a step slower would nine of ten runs hold.
        boolean wrong = kept.isPresent()
                && (lab.board.holds(
                                                kept.get().clock() - 25,
                                                kept.get().voltage().level())
                                        < 0.9
                                && uneven
                        || lab.board.steady(
                                        kept.get().clock(), kept.get().voltage().level())
                                > 80);
        return new Result(near, lab.trials.size(), lab.load / 60, lab.hot, lab.beyond, wrong, uneven, kept.isEmpty());
    }

    private static final TuningTables TABLES = TuningTables.load();

    private void row(Family family, boolean fan, Strategy strategy, String flaws, Lab.Flaws given) {
        List<Result> results = new ArrayList<>(IntStream.range(0, boards)
                .parallel()
                .mapToObj(i -> result(family, fan, strategy, given, i))
                .toList());
        double[] trials = results.stream().mapToDouble(Result::trials).sorted().toArray();
        double[] hours = results.stream().mapToDouble(Result::hours).sorted().toArray();
        System.out.printf(
                Locale.ROOT,
                "| %s | %s | %s | %s | %.1f %% | %.0f, %.0f | %.1f, %.1f | %d | %d | %d | %d | %d |%n",
                family.board,
                fan ? "fan" : "heat sink",
                strategy.words(),
                flaws,
                100.0 * results.stream().filter(Result::near).count() / boards,
                at(trials, 0.5),
                at(trials, 0.95),
                at(hours, 0.5),
                at(hours, 0.95),
                results.stream().mapToInt(Result::hot).sum(),
                results.stream().mapToInt(Result::beyond).sum(),
                results.stream().filter(Result::wrong).count(),
                results.stream().filter(Result::uneven).count(),
                results.stream().filter(Result::nothing).count());
    }

    private static double at(double[] sorted, double share) {
        return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
    }
}
