package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.record.TrialReport;
import bootmend.trial.search.Advice;
import bootmend.trial.Frontier;
import bootmend.trial.Gain;
import bootmend.trial.Placed;
import bootmend.trial.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Prints what a board's trials come to: the next trial first, then what it rests on. */
public final class TrialReportPage {

    private static final int NAME_WIDTH = 11;
    private static final double PERCENT = 100;

    private final Screen screen;

    public TrialReportPage(Screen screen) {
        this.screen = screen;
    }

    public void print(TrialReport report) {
        advice(report);
        frontier(report.frontier());
        gains(report.gains());
        if (!report.notes().isEmpty()) {
            screen.blank();
            report.notes().forEach(note -> screen.paragraph("note", NAME_WIDTH, note));
        }
        new CautionPage(screen).print(report.cautions());
    }

    private void advice(TrialReport report) {
        Advice advice = report.advice();
        screen.line(
                "bold",
                report.unit().label() + " (" + report.unit().board() + "), "
                        + Amount.count(report.trials().size(), "trial"));
        screen.paragraph("next", NAME_WIDTH, next(advice));
        screen.paragraph("why", NAME_WIDTH, advice.why());
        advice.stops().forEach(stop -> screen.paragraph("not", NAME_WIDTH, stop));
        advice.peak()
                .ifPresent(peak -> screen.paragraph(
                        "estimate",
                        NAME_WIDTH,
                        String.format(
                                Locale.ROOT,
                                "peak %.0f degC, plus or minus %.0f (95 %% of such runs), from this board's own trials",
                                peak.celsius(),
                                peak.uncertainty())));
        if (!advice.noPeak().isEmpty()) {
            screen.paragraph("estimate", NAME_WIDTH, "none: " + advice.noPeak());
        }
        screen.paragraph(
                "best",
                NAME_WIDTH,
                advice.best()
                        .map(setting ->
                                setting.words() + (advice.bestIsKnownGood() ? ", known-good" : ", not known-good yet"))
                        .orElse("nothing held yet"));
    }

    private static String next(Advice advice) {
        String lines = advice.setting().map(TrialReportPage::lines).orElse("");
        return switch (advice.action()) {
            case TRY -> "try " + lines;
            case RUN_LONG -> "run " + lines + " for 45 minutes under full load";
            case MEND -> "mend cooling or supply, then run " + lines + " again";
            case STOP -> "stop here";
        };
    }

    private static String lines(Setting setting) {
        return "arm_freq=" + setting.clock() + " over_voltage=" + setting.step();
    }

    private void frontier(Frontier frontier) {
        if (frontier.points().isEmpty()) {
            return;
        }
        screen.blank();
        List<List<String>> rows = frontier.points().stream()
                .map(point -> List.of(
                        point.clock() + " MHz", step(point.failed(), point.clock()), step(point.held(), point.clock())))
                .toList();
        screen.table(List.of("clock", "highest step that failed", "lowest step that held"), rows);
        frontier.contradictions().forEach(pair -> screen.paragraph("odd", NAME_WIDTH, pair.words()));
    }

    private static String step(Optional<Placed> trial, long clock) {
        return trial.map(placed -> placed.setting().step()
                        + (placed.setting().clock() == clock
                                ? ""
                                : " (at " + placed.setting().clock() + " MHz)"))
                .orElse("-");
    }

    private void gains(List<Gain> gains) {
        if (gains.isEmpty()) {
            return;
        }
        screen.blank();
        List<List<String>> rows = new ArrayList<>();
        for (Gain gain : gains) {
            for (Gain.Point point : gain.points()) {
                rows.add(List.of(
                        gain.score(),
                        point.clock() + " MHz",
                        String.format(Locale.ROOT, "%+.0f %%", point.gain() * PERCENT),
                        String.format(Locale.ROOT, "%.2f", point.perClock())));
            }
        }
        screen.table(List.of("score", "clock", "against " + bases(gains), "gain per clock"), rows);
        for (Gain gain : gains) {
            gain.stoppedPayingAt()
                    .ifPresent(clock -> screen.line(gain.score() + ": above " + clock
                            + " MHz more clock stopped paying (less than half of it arrived)."));
        }
    }

    private static String bases(List<Gain> gains) {
        List<Long> clocks = gains.stream().map(Gain::baseClock).distinct().toList();
        return clocks.size() == 1 ? clocks.get(0) + " MHz" : "the lowest clock";
    }
}
