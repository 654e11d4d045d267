package bootmend.trial;

import bootmend.tuning.TuningTables;
import bootmend.tuning.VoltageScale;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Holds a board's log against what a trial says that it proves. */
public final class LogChecks {

    /** Share of the time with a clock that may be below the set one while a board holds it. No source. */
    private static final double LEAST_SHARE_BELOW = 0.1;
    /** How busy processors are under full load, in percent. No source. */
    private static final double FULL_LOAD = 90;
    /** How long nothing may be written before another thing may have happened, in minutes. No source. */
    private static final double GAP = 2;
    /** How far told minutes may go beyond the log's, as a share. No source. */
    private static final double ROUNDED = 0.05;
    /** How far told temperatures may lie below the log's, in degC. No source. */
    private static final double DEGREE = 1;
    /** How far a fixed voltage may waver at full clock, in V: less than a step and a half of it. No source. */
    private static final double WAVERS = 0.035;
    /** How far a fixed voltage may lie from the published one, in V: a step. */
    private static final double OFF = 0.025;

    private static final double PERCENT = 100;

    private final Placed trial;
    private final LogSummary log;
    private final TuningTables tables;
    private final List<String> found = new ArrayList<>();

    private LogChecks(Placed trial, LogSummary log, TuningTables tables) {
        this.trial = trial;
        this.log = log;
        this.tables = tables;
    }

    /**
     * What a log says against a trial.
     *
     * @param trial as it was told, with what of the run was told and not read from the log
     * @param log summed up at the trial's clock
     * @return a sentence each; none where the log says nothing against it
     */
    public static List<String> contradictions(Placed trial, LogSummary log, TuningTables tables) {
        return new LogChecks(trial, log, tables).check();
    }

    private List<String> check() {
        ranConfig();
        if (trial.trial().outcome() == Outcome.HOLDS) {
            held();
        }
        if (trial.trial().outcome() == Outcome.NO_BOOT && log.minutes() > 0 && log.setClockGiven()) {
            log.minutesAtFullClock()
                    .ifPresent(minutes -> say(
                            minutes > 0,
                            "the log shows the board running at %d MHz, so that it did boot",
                            trial.setting().clock()));
        }
        return List.copyOf(found);
    }

    private void held() {
        clock();
        say(
                log.restarts() > 0,
                "the log goes over another start of the board (%d in its middle), so that it did not hold through",
                log.restarts());
        say(
                log.longestGapMinutes() > GAP,
                "the log has a gap of %.1f minutes, in which the board may have stopped",
                log.longestGapMinutes());
        length();
        load();
        mask();
        temperature();
        volts();
    }

    private void clock() {
        if (log.highestClock().isEmpty()) {
            return;
        }
        double highest = log.highestClock().getAsDouble();
        long set = trial.setting().clock();
        if (highest < set * LogSummary.FULL) {
            say(true, "the log never reaches %d MHz: its highest clock is %.0f MHz", set, highest);
            return;
        }
        double below = log.shareBelowInside().orElse(0);
        say(
                below > LEAST_SHARE_BELOW
                        && trial.trial().run().fullLoad()
                        && log.mask().orElse(0) == 0,
                "between its first and its last row at %d MHz the clock was below for %.0f %% of the time",
                set,
                below * PERCENT);
        say(
                highest > set * (2 - LogSummary.FULL),
                "the log goes up to %.0f MHz, so that %d MHz is not what ran",
                highest,
                set);
    }

    private void length() {
        double logged = log.minutesAtFullClock().orElse(log.minutes());
        trial.trial()
                .run()
                .minutes()
                .ifPresent(told -> say(
                        told > logged * (1 + ROUNDED) + 1,
                        "%.0f minutes were told, and the log shows %.1f at the set clock",
                        told,
                        logged));
    }

    private void load() {
        log.busy()
                .ifPresent(busy -> say(
                        trial.trial().run().fullLoad() && busy < FULL_LOAD,
                        "full load was told, and the processors were busy for %.0f %% of the logged time",
                        busy));
    }

    private void mask() {
        long told = trial.trial().run().mask().orElse(log.mask().orElse(0));
        long missing = log.mask().orElse(0) & ~told;
        say(
                missing != 0,
                "the throttle mask was told as %s, and the log has %s",
                ThrottleMask.text(told),
                ThrottleMask.text(log.mask().orElse(0)));
    }

    private void temperature() {
        if (log.peak().isPresent() && trial.trial().run().peak().isPresent()) {
            say(
                    log.peak().getAsDouble() > trial.trial().run().peak().getAsDouble() + DEGREE,
                    "a peak of %.1f degC was told, and the log has %.1f",
                    trial.trial().run().peak().getAsDouble(),
                    log.peak().getAsDouble());
        }
    }

    /** Only a voltage that is fixed says what it should be. */
    private void volts() {
        if (trial.setting().voltage().mode() != VoltageMode.FIXED
                || log.meanVolts().isEmpty()) {
            return;
        }
        say(
                log.spreadVolts().orElse(0) > WAVERS,
                "over_voltage fixes the core voltage, and at full clock it wavers by %.3f V",
                log.spreadVolts().orElse(0));
        Optional<VoltageScale> scale = tables.voltageSteps()
                .scale(VoltageAxis.STEPS.key(), trial.trial().unit().board());
        scale.map(known -> known.microvolts(trial.setting().voltage().amount()))
                .filter(microvolts -> microvolts.isPresent())
                .map(microvolts -> microvolts.getAsLong() / 1e6)
                .ifPresent(volts -> say(
                        Math.abs(volts - log.meanVolts().getAsDouble()) > OFF,
                        "step %d is %.3f V on this board, and the log has %.3f V at full clock",
                        trial.setting().voltage().amount(),
                        volts,
                        log.meanVolts().getAsDouble()));
    }

    /** A log may say which config file lay on the board; then another one's settings are not what ran. */
    private void ranConfig() {
        String read = trial.trial().grounds().settings();
        Optional<String> named = Optional.of(read).filter(text -> !text.isEmpty());
        named.filter(file -> !log.configs().isEmpty() && log.configs().stream().noneMatch(file::startsWith))
                .ifPresent(file -> say(
                        true,
                        "the settings were read from %s, and on the board lay %s",
                        shortened(file),
                        String.join(
                                " and ",
                                log.configs().stream().map(LogChecks::shortened).toList())));
        log.tryOnce()
                .filter(once -> !read.isEmpty() && once != read.startsWith("tryboot"))
                .ifPresent(once -> say(
                        true,
                        once
                                ? "the log says that the board was started with its try-once flag, and the settings were read "
                                        + "from the config file"
                                : "the log says that the board was started without its try-once flag, and the settings were "
                                        + "read from the staged file"));
    }

    private static String shortened(String file) {
        return file.replaceFirst("( sha256 [0-9a-f]{12})[0-9a-f]{52}", "$1...");
    }

    private void say(boolean so, String sentence, Object... values) {
        if (so) {
            found.add(String.format(Locale.ROOT, sentence, values));
        }
    }
}
