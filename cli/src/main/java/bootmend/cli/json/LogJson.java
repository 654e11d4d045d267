package bootmend.cli.json;

import bootmend.trial.LogSummary;
import bootmend.trial.ThrottleMask;
import java.util.List;

/** What a board's log comes to as a JSON document; null is what it has no columns for. */
public record LogJson(
        int rows,
        long badRows,
        List<String> problems,
        boolean cutShort,
        int gaps,
        double gapMinutes,
        double minutes,
        Double setClockMHz,
        boolean setClockGiven,
        Double minutesAtFullClock,
        Double shareBelowSetClock,
        Double meanClockMHz,
        Double peakDegC,
        Double secondsTo80DegC,
        Double minVolts,
        Double maxVolts,
        String throttleMask,
        List<String> bits) {

    public static LogJson of(LogSummary log) {
        return new LogJson(
                log.rows(),
                log.badRows(),
                log.problems(),
                log.cutShort(),
                log.gaps(),
                log.gapMinutes(),
                log.minutes(),
                Given.orNull(log.setClock()),
                log.setClockGiven(),
                Given.orNull(log.minutesAtFullClock()),
                Given.orNull(log.shareBelow()),
                Given.orNull(log.meanClock()),
                Given.orNull(log.peak()),
                Given.orNull(log.secondsTo80()),
                Given.orNull(log.minVolts()),
                Given.orNull(log.maxVolts()),
                log.mask().isPresent() ? ThrottleMask.text(log.mask().getAsLong()) : null,
                log.bits());
    }
}
