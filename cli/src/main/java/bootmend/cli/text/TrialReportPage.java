package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.record.TrialReport;
import bootmend.trial.Frontier;
import bootmend.trial.Gain;
import bootmend.trial.Placed;
import bootmend.trial.Setting;
import bootmend.trial.search.Advice;
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
        report.frontiers().forEach(this::frontier);
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
        if (!advice.change().isEmpty()) {
            screen.paragraph("voltage", NAME_WIDTH, advice.change());
        }
        advice.outcomes()
                .forEach(outlook ->
                        screen.paragraph("then", NAME_WIDTH, "if " + outlook.outcome() + ": " + outlook.then()));
        advice.stops().forEach(stop -> screen.paragraph("not", NAME_WIDTH, stop));
        advice.peak()
                .ifPresent(peak -> screen.paragraph(
                        "estimate",
                        NAME_WIDTH,
                        String.format(
                                Locale.ROOT,
                                "peak %.0f degC, plus or minus %.0f (95 %% of such runs), from this board's own trials",
                                peak.celsius(),
                                Math.ceil(peak.uncertainty()))));
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
        String minutes = advice.minutes().isPresent()
                ? Math.round(advice.minutes().getAsDouble()) + " minutes under full load"
                : "";
        return switch (advice.action()) {
            case TRY -> "try " + lines + " for " + minutes;
            case RUN_LONG -> "run " + lines + " for " + minutes + ", to keep it";
            case IMPROVE ->
                lines.isEmpty()
                        ? "improve cooling or supply"
                        : "improve the supply, then run " + lines + " for " + minutes + " again";
            case STOP -> "stop here";
        };
    }

    private static String lines(Setting setting) {
        return String.join(" ", setting.lines());
    }

    private void frontier(Frontier frontier) {
        if (frontier.points().isEmpty()) {
            return;
        }
        screen.blank();
        String key = frontier.axis().key();
        List<List<String>> rows = frontier.points().stream()
                .map(point -> List.of(
                        point.clock() + " MHz",
                        amount(point.failed(), point.clock()),
                        amount(point.held(), point.clock())))
                .toList();
        screen.table(List.of("clock", "highest " + key + " that failed", "lowest that held"), rows);
        frontier.contradictions().forEach(pair -> screen.paragraph("odd", NAME_WIDTH, pair.words()));
    }

    private static String amount(Optional<Placed> trial, long clock) {
        return trial.map(placed -> (placed.setting().voltage().set().isEmpty()
                                ? "left to the board"
                                : Long.toString(placed.setting().voltage().amount()))
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
