package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.trial.LogSummary;
import java.util.Locale;

/** Prints what a board's log comes to. */
public final class LogPage {

    private static final double PERCENT = 100;
    private static final double MINUTE = 60;

    private final Screen screen;

    public LogPage(Screen screen) {
        this.screen = screen;
    }

    public void print(LogSummary log) {
        field(
                "rows",
                log.rows() + " good, " + log.badRows() + " left out"
                        + (log.cutShort() ? "; the log goes on, but no more rows are read" : ""));
        log.problems().forEach(problem -> field("", problem));
        if (log.badRows() > log.problems().size()) {
            field("", "and " + Amount.count(log.badRows() - log.problems().size(), "row") + " more");
        }
        log.sources().forEach(source -> field("measured", source));
        log.configs().forEach(config -> field("on the board", config));
        field(
                "time",
                minutes(log.minutes())
                        + (log.gaps() == 0
                                ? ", no gap"
                                : ", and " + Amount.count(log.gaps(), "gap") + " of " + minutes(log.gapMinutes())
                                        + " together that count for nothing"));
        if (log.restarts() > 0) {
            field("started again", Amount.count(log.restarts(), "time") + " in the middle of the log");
        }
        log.setClock()
                .ifPresent(clock -> field(
                        "set clock",
                        TrialPage.number(log.setClock()) + " MHz"
                                + (log.setClockGiven() ? "" : ", the highest in the log")));
        log.minutesAtFullClock().ifPresent(full -> field("at full clock", minutes(full)));
        log.shareBelow()
                .ifPresent(
                        share -> field("below it", String.format(Locale.ROOT, "%.1f %% of the time", share * PERCENT)));
        log.meanClock().ifPresent(mean -> field("mean clock", Math.round(mean) + " MHz"));
        log.busy()
                .ifPresent(
                        busy -> field("busy", String.format(Locale.ROOT, "%.0f %% of the time at full clock", busy)));
        log.peak().ifPresent(peak -> field("peak", TrialPage.number(log.peak()) + " degC"));
        field(
                "80 degC",
                log.secondsTo80().isPresent()
                        ? "reached after " + minutes(log.secondsTo80().getAsDouble() / MINUTE)
                        : "not reached");
        log.maxVolts()
                .ifPresent(volts -> field(
                        "volts",
                        Amount.volts(log.minVolts().orElse(volts), false) + " to " + Amount.volts(volts, false)));
        log.meanVolts().ifPresent(volts -> field("at full clock", Amount.volts(volts, false) + " on average"));
        field("throttle bits", bits(log) + (log.bitsBefore() ? " (all of them in the first row already)" : ""));
    }

    private static String bits(LogSummary log) {
        if (log.mask().isEmpty()) {
            return "not in the log";
        }
        return log.bits().isEmpty() ? "none seen" : String.join(", ", log.bits());
    }

    private static String minutes(double minutes) {
        return String.format(Locale.ROOT, "%.1f min", minutes);
    }

    private void field(String name, String value) {
        screen.paragraph(name, 15, value);
    }
}
