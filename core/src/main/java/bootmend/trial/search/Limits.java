package bootmend.trial.search;

import bootmend.trial.HeatEstimate;
import bootmend.trial.LogSummary;
import bootmend.trial.Placed;
import bootmend.trial.Placement;
import bootmend.trial.Setting;
import bootmend.trial.Standing;
import bootmend.trial.StepLimits;
import bootmend.trial.Surroundings;
import bootmend.trial.VoltageAxis;
import bootmend.trial.VoltageMode;
import bootmend.tuning.Reach;
import bootmend.tuning.TuningTables;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Says why a setting is not to be suggested, whatever is expected of it. */
final class Limits {

    /** How much more clock than ever ran is suggested where nothing is known of the heat. No source. */
    private static final double BEYOND = 1.1;
    /** The same for voltage, in levels. No source. */
    private static final double LEVELS_BEYOND = 2;

    private final String board;
    private final TuningTables tables;
    private final StepLimits steps;
    private final HeatEstimate heat;
    private final OptionalDouble ambient;
    private final List<Placed> here;

    /**
     * @param trials of one physical board
     * @param surroundings as the next trial will have them; only trials with the same cooling and supply tell of heat
     */
    Limits(String board, List<Placed> trials, Surroundings surroundings, TuningTables tables) {
        this.board = board;
        this.tables = tables;
        this.steps = StepLimits.of(tables);
        this.heat = HeatEstimate.of(board, trials, surroundings, tables);
        this.ambient = surroundings.ambient();
        this.here = trials.stream()
                .filter(trial -> trial.trial().surroundings().isLike(surroundings))
                .toList();
    }

    /** A sentence, where the setting passes a limit. */
    Optional<String> passed(Setting setting) {
        return published(setting).or(() -> throttled(setting)).or(() -> heat(setting));
    }

    private Optional<String> published(Setting setting) {
        long amount = setting.voltage().amount();
        if (setting.axis() == VoltageAxis.STEPS && amount > steps.published()) {
            return Optional.of(
                    setting.words() + " passes the published range, which ends at step " + steps.published() + ".");
        }
        if (setting.axis() == VoltageAxis.STEPS && amount > steps.withoutForceTurbo()) {
            return Optional.of(setting.words() + " needs force_turbo=1, which with more voltage can permanently mark a "
                    + "board so that its warranty is void.");
        }
        return reach("arm_freq", setting.clock(), setting)
                .or(() -> reach(setting.axis().key(), amount, setting));
    }

    private Optional<String> reach(String key, long value, Setting setting) {
        return tables.reaches().of(key, board).stream()
                .filter(reach ->
                        value > reach.max().orElse(value) || value < reach.min().orElse(value))
                .findFirst()
                .map(reach -> setting.words() + " passes what is published of " + key + " on " + board + ": "
                        + reach.why() + bounds(reach) + ".");
    }

    private static String bounds(Reach reach) {
        return reach.max().isPresent() ? " (" + reach.max().getAsLong() + ")" : "";
    }

    /** What a board could not do for heat or supply it cannot do when more is asked, in the same surroundings. */
    Optional<String> throttled(Setting setting) {
        return here.stream()
                .filter(trial -> throttled(trial) && asksAtLeast(setting, trial.setting()))
                .filter(trial -> here.stream().noneMatch(later -> isCool(later, trial)))
                .findFirst()
                .map(trial -> setting.words() + " asks at least as much as "
                        + trial.setting().words() + ", which the board could not keep up with this cooling and supply ("
                        + trial.trial().id() + ").");
    }

    private static boolean throttled(Placed trial) {
        return trial.is(Standing.Kind.THROTTLED) || trial.trial().run().peak().orElse(0) >= LogSummary.HOT;
    }

    private static boolean isCool(Placed later, Placed trial) {
        return later.trial().when().isAfter(trial.trial().when())
                && later.is(Standing.Kind.HELD)
                && !throttled(later)
                && asksAtLeast(later.setting(), trial.setting());
    }

    /** Whether it draws no less power: no lower clock, no lower voltage; what a board takes by itself is 0 on any axis. */
    private static boolean asksAtLeast(Setting setting, Setting other) {
        boolean comparable = setting.axis() == other.axis() || other.voltage().mode() == VoltageMode.LEFT;
        return comparable
                && setting.clock() >= other.clock()
                && setting.voltage().level() >= other.voltage().level();
    }

    /** A sentence, where the setting may come too near to 80 degC, or nobody knows. */
    Optional<String> heat(Setting setting) {
        Optional<HeatEstimate.Peak> peak = peak(setting);
        if (peak.isEmpty()) {
            return unknownHeat(setting);
        }
        return peak.filter(estimate -> estimate.most() > LogSummary.HOT)
                .map(estimate -> String.format(
                        Locale.ROOT,
                        "%s may come to %.0f degC (about %.0f, plus or minus %.0f), over %.0f degC.",
                        setting.words(),
                        estimate.most(),
                        estimate.celsius(),
                        estimate.uncertainty(),
                        LogSummary.HOT));
    }

    private Optional<String> unknownHeat(Setting setting) {
        List<Placed> ran = here.stream()
                .filter(trial -> trial.is(Standing.Kind.HELD) && !throttled(trial))
                .toList();
        double clock = ran.stream()
                .mapToDouble(trial -> trial.setting().clock())
                .max()
                .orElse(Placement.stockClock(board, tables).orElse(0));
        double level = ran.stream()
                .filter(trial -> trial.setting().axis() == setting.axis())
                .mapToDouble(trial -> trial.setting().voltage().level())
                .max()
                .orElse(0);
        boolean far =
                setting.clock() > clock * BEYOND || setting.voltage().level() > Math.max(0, level) + LEVELS_BEYOND;
        return far
                ? Optional.of(setting.words() + " goes far beyond what ran with this cooling, and its heat cannot be "
                        + "estimated: " + noPeak() + ".")
                : Optional.empty();
    }

    /** The estimated peak, where there is an estimate and an ambient temperature. */
    Optional<HeatEstimate.Peak> peak(Setting setting) {
        return heat instanceof HeatEstimate.Fitted fitted && ambient.isPresent()
                ? Optional.of(fitted.peak(setting, ambient.getAsDouble()))
                : Optional.empty();
    }

    /** Why there is no estimate; empty where there is one. */
    String noPeak() {
        if (heat instanceof HeatEstimate.Refused refused) {
            return refused.why();
        }
        return ambient.isEmpty() ? "no ambient temperature is given" : "";
    }
}
