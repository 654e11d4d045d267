package bootmend.trial.search;

import bootmend.adaptive.Likelihood;
import bootmend.adaptive.QuestPlus;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Looks for a board's {@link Target}: chooses the run that tells most of it for its minutes, until enough is known to
 * keep a setting.
 *
 * <p>The gain of a run is how much less is expected to be unknown of the target after it, in bits ({@link QuestPlus}); a run
 * costs its minutes and those of starting the board with other settings.
 */
final class Search {

    /** Below this share of the likeliest board, a board is no longer thought of. No source. */
    private static final double LEAST_SHARE = 1e-3;
    /** Lengths of short runs, in minutes. No source. */
    private static final double[] SCREENS = {5, 12, 20};
    /** Minutes that a start with other settings takes. No source. */
    private static final double START = 3;
    /** How sure a setting is before it gets a run of 45 minutes. No source. */
    private static final double PROVE = 0.93;
    /** How sure it is that nothing holds before the search says so. No source. */
    private static final double SURE = 0.9;
    /** Gain below which a run is not worth its minutes, in bits a minute. No source. */
    private static final double LEAST_GAIN = 0.004;
    /** How likely the outcome of a run to come tells nothing of the board. No source. */
    private static final double DOUBT = 0.05;

    private static final double AS_GOOD = 0.03;
    private static final double HALF = 0.5;
    private static final double EXACT = 0.15;
    /** Candidates at one level. */
    private static final int CLOCKS_A_LEVEL = 6;
    /** Chances between which a run tells something. */
    private static final double SURE_TO_FAIL = 0.04;

    private static final double SURE_TO_HOLD = 0.97;
    /** How many places are worked out for every length. */
    private static final int MOST_LENGTHS = 8;

    private static final int MOST_BEHIND = 4;
    private static final int OUTCOMES = 3;

    private final Silicons boards;
    private final Ground ground;
    private final int[] classes;
    private final double[] shares;

    Search(Silicons boards, Ground ground) {
        this.boards = boards.likely(LEAST_SHARE);
        this.ground = ground;
        this.classes = this.boards.all().stream()
                .mapToInt(board -> index(Target.of(board, ground)))
                .toArray();
        this.shares = new double[count()];
        for (int i = 0; i < classes.length; i++) {
            shares[classes[i]] += this.boards.prior().of(i);
        }
    }

    private int count() {
        return ground.clocks() * ground.levels() + 1;
    }

    private int index(Target target) {
        return target.clock() < 0 ? count() - 1 : target.clock() * ground.levels() + target.level();
    }

    private Target target(int index) {
        return index == count() - 1 ? new Target(-1, 0) : new Target(index / ground.levels(), index % ground.levels());
    }

    Search after(Observation seen) {
        return new Search(boards.after(seen), ground);
    }

    /** The chance that a run holds. */
    double holds(double clock, double level, double minutes) {
        return boards.prior().mean(i -> Stability.holds(boards.all().get(i), clock, level, minutes));
    }

    private double holds(Target at, double minutes) {
        return holds(ground.clock(at.clock()), ground.grains(at.level()), minutes);
    }

    /**
     * The chance that a setting holds 45 minutes and is within a step of clock and a step of voltage of the target.
     */
    double near(Target kept) {
        double clock = ground.clock(kept.clock());
        double level = ground.grains(kept.level());
        return boards.prior()
                .mean(i -> target(classes[i]).isNear(kept)
                        ? Stability.holds(boards.all().get(i), clock, level, Stability.MINUTES)
                        : 0);
    }

    /** @param proven settings that held for 45 minutes as the board is now, where they are among the ground's */
    Step next(List<Target> proven, Optional<Target> unsettled) {
        if (shares[count() - 1] > SURE) {
            return cornered();
        }
        Target best = best(proven);
        double near = near(best);
        List<Run> runs = runs();
        List<Target> behind = behind(runs);
        boolean worthless = runs.isEmpty() || runs.get(0).gain() < LEAST_GAIN;
        Optional<Target> kept = kept(proven, best, near);
        if (kept.isPresent() && (near >= PROVE || worthless)) {
            return new Step(
                    Step.Kind.DONE, kept.get(), 0, holds(kept.get(), Stability.MINUTES), near(kept.get()), behind);
        }
        if (near >= PROVE || worthless) {
            double minutes = unsettled.isPresent() && unsettled.get().equals(best) ? SCREENS[1] : Stability.MINUTES;
            Step.Kind kind = minutes < Stability.MINUTES ? Step.Kind.SCREEN : Step.Kind.PROVE;
            return new Step(kind, best, minutes, holds(best, minutes), near, behind);
        }
        Run run = runs.get(0);
        return new Step(
                Step.Kind.SCREEN,
                run.at(),
                run.minutes(),
                holds(run.at(), run.minutes()),
                near,
                behind.subList(Math.min(1, behind.size()), behind.size()));
    }

    /** What is proven and as good as the best, where there is one: a little better is not worth another long run. */
    private Optional<Target> kept(List<Target> proven, Target best, double near) {
        return proven.contains(best)
                ? Optional.of(best)
                : proven.stream()
                        .filter(target -> near(target) >= near - AS_GOOD)
                        .max(Comparator.comparingDouble(this::near));
    }

    /** Where limits leave nothing that is likely to be kept: the likeliest run that they leave, or nothing. */
    private Step cornered() {
        List<Target> free = new ArrayList<>();
        for (int level = 0; level < ground.levels(); level++) {
            for (int clock = 0; clock < Math.min(2, ground.free(level)); clock++) {
                free.add(new Target(clock, level));
            }
        }
        Target at = free.stream()
                .max(Comparator.comparingDouble(each -> holds(each, SCREENS[1])))
                .orElseThrow();
        double chance = holds(at, SCREENS[1]);
        return chance < HALF
                ? new Step(Step.Kind.NOTHING, at, 0, 0, 0, List.of())
                : new Step(Step.Kind.SCREEN, at, SCREENS[1], chance, 0, List.of());
    }

    /** What would be kept now. */
    Target best() {
        return best(List.of());
    }

    private Target best(List<Target> proven) {
        List<Target> likely = IntStream.range(0, count() - 1)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -shares[i]))
                .limit(3)
                .map(this::target)
                .toList();
        List<Target> all = new ArrayList<>(proven);
        for (Target each : likely) {
            for (int clock = each.clock() - 1; clock <= each.clock() + 1; clock++) {
                for (int level = each.level() - 1; level <= each.level() + 1; level++) {
                    Target target = new Target(clock, level);
                    boolean free = level >= 0 && level < ground.levels() && clock >= 0 && clock < ground.free(level);
                    if (free && !all.contains(target)) {
                        all.add(target);
                    }
                }
            }
        }
        return all.stream().max(Comparator.comparingDouble(this::worth)).orElseThrow();
    }

    /** Its chance to be near the target, and a little for being it. */
    private double worth(Target kept) {
        return near(kept) + EXACT * shares[index(kept)];
    }

    /** A run that may be next. */
    private record Run(Target at, double minutes, double gain) {}

    private static List<Target> behind(List<Run> runs) {
        return runs.stream().map(Run::at).distinct().limit(MOST_BEHIND).toList();
    }

    /** Runs by their gain for their minutes, the best first: every place for one length, the best of them for the others. */
    private List<Run> runs() {
        List<Target> places = places();
        List<Run> runs = runs(places, new double[] {SCREENS[1]});
        List<Target> best = runs.stream().limit(MOST_LENGTHS).map(Run::at).toList();
        runs.addAll(runs(best, new double[] {SCREENS[0], SCREENS[2]}));
        runs.sort(Comparator.comparingDouble(run -> -run.gain()));
        return runs;
    }

    private List<Run> runs(List<Target> places, double[] lengths) {
        QuestPlus quest = QuestPlus.ofClasses(boards.prior(), new Chances(places, lengths), OUTCOMES, classes, count());
        double unknown = quest.entropy();
        List<Run> runs = new ArrayList<>();
        for (int test = 0; test < places.size() * lengths.length; test++) {
            double minutes = lengths[test % lengths.length];
            double gain = unknown - quest.expectedEntropy(test);
            runs.add(new Run(places.get(test / lengths.length), minutes, gain / (minutes + START)));
        }
        runs.sort(Comparator.comparingDouble(run -> -run.gain()));
        return runs;
    }

    /** The chances of each run on each board: it held, it did not boot, it failed while it ran. */
    private final class Chances implements Likelihood {

        private final double[][] holds;
        private final double[][] noBoot;

        private final int lengths;

        Chances(List<Target> places, double[] minutes) {
            int size = boards.all().size();
            lengths = minutes.length;
            holds = new double[places.size() * lengths][size];
            noBoot = new double[places.size()][size];
            for (int place = 0; place < places.size(); place++) {
                double clock = ground.clock(places.get(place).clock());
                double level = ground.grains(places.get(place).level());
                for (int i = 0; i < size; i++) {
                    noBoot[place][i] = Stability.noBoot(boards.all().get(i), clock, level);
                    double rate = Stability.rate(boards.all().get(i), clock, level);
                    for (int length = 0; length < lengths; length++) {
                        holds[place * lengths + length][i] =
                                (1 - noBoot[place][i]) * Stability.survives(rate, minutes[length]);
                    }
                }
            }
        }

        @Override
        public double of(int test, int outcome, int board) {
            double held = holds[test][board];
            double failed = noBoot[test / lengths][board];
            double chance = outcome == 0 ? held : outcome == 1 ? failed : 1 - failed - held;
            return (1 - DOUBT) * chance + DOUBT / OUTCOMES;
        }
    }

    /** Where a run may tell something: some clocks at each level between those sure to hold and those sure to fail. */
    private List<Target> places() {
        List<Target> places = new ArrayList<>();
        for (int level = 0; level < ground.levels(); level++) {
            int first = firstBelow(level, SURE_TO_HOLD);
            int end = firstBelow(level, SURE_TO_FAIL);
            List<Target> open = new ArrayList<>();
            for (int clock = first; clock < end; clock++) {
                open.add(new Target(clock, level));
            }
            int every = Math.max(1, (open.size() + CLOCKS_A_LEVEL - 1) / CLOCKS_A_LEVEL);
            for (int i = 0; i < open.size(); i += every) {
                places.add(open.get(i));
            }
        }
        return places;
    }

    /** The lowest clock at a level that holds with less than a chance, which only falls as the clock rises. */
    private int firstBelow(int level, double chance) {
        int low = 0;
        int high = ground.free(level);
        while (low < high) {
            int middle = (low + high) / 2;
            if (holds(new Target(middle, level), SCREENS[1]) < chance) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
