package bootmend.cli.json;

import bootmend.record.TrialReport;
import bootmend.trial.Frontier;
import bootmend.trial.Gain;
import bootmend.trial.HeatEstimate;
import bootmend.trial.Placed;
import bootmend.trial.search.Advice;
import bootmend.view.CautionView;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** What a board's trials come to as a JSON document. */
public record TrialReportJson(
        String label,
        String board,
        AdviceJson advice,
        List<FrontierJson> frontiers,
        List<String> contradictions,
        List<GainJson> gains,
        List<String> notes,
        List<CautionView> cautions) {

    /** What to do next; {@code action} is "try", "run long", "improve" or "stop". */
    record AdviceJson(
            String action,
            Optional<SettingJson> setting,
            OptionalDouble minutes,
            OptionalDouble chanceToHold,
            String why,
            String change,
            List<Advice.Outlook> outcomes,
            List<SettingJson> behind,
            List<String> stops,
            Optional<Double> peakDegC,
            Optional<Double> uncertaintyDegC,
            String noPeak,
            Optional<SettingJson> best,
            boolean bestKnownGood) {

        public static AdviceJson of(Advice advice) {
            Optional<HeatEstimate.Peak> peak = advice.peak();
            return new AdviceJson(
                    advice.action().word(),
                    advice.setting().map(SettingJson::of),
                    advice.minutes(),
                    advice.chance(),
                    advice.why(),
                    advice.change(),
                    advice.outcomes(),
                    advice.behind().stream().map(SettingJson::of).toList(),
                    advice.stops(),
                    peak.map(HeatEstimate.Peak::celsius),
                    peak.map(HeatEstimate.Peak::uncertainty),
                    advice.noPeak(),
                    advice.best().map(SettingJson::of),
                    advice.bestIsKnownGood());
        }
    }

    /** What a board needs where its voltage is set by {@code key}; first the one that the advice goes by. */
    record FrontierJson(String key, List<PointJson> points) {

        public static FrontierJson of(Frontier frontier) {
            return new FrontierJson(
                    frontier.axis().key(),
                    frontier.points().stream().map(PointJson::of).toList());
        }
    }

    /** A clock with the highest number of the key that failed and the lowest that held; null where there is none. */
    record PointJson(
            long clockMHz,
            Optional<Long> failed,
            Optional<String> failedTrial,
            Optional<Long> held,
            Optional<String> heldTrial) {

        public static PointJson of(Frontier.Point point) {
            return new PointJson(
                    point.clock(), amount(point.failed()), id(point.failed()), amount(point.held()), id(point.held()));
        }

        private static Optional<Long> amount(Optional<Placed> trial) {
            return trial.map(placed -> placed.setting().voltage().amount());
        }

        private static Optional<String> id(Optional<Placed> trial) {
            return trial.map(placed -> placed.trial().id());
        }
    }

    /** What more clock brought in one score; {@code stoppedPayingAtMHz} is null where the last step still paid. */
    record GainJson(String score, long baseClockMHz, List<Gain.Point> points, OptionalLong stoppedPayingAtMHz) {

        public static GainJson of(Gain gain) {
            return new GainJson(gain.score(), gain.baseClock(), gain.points(), gain.stoppedPayingAt());
        }
    }

    public static TrialReportJson of(TrialReport report) {
        return new TrialReportJson(
                report.unit().label(),
                report.unit().board(),
                AdviceJson.of(report.advice()),
                report.frontiers().stream().map(FrontierJson::of).toList(),
                report.frontiers().stream()
                        .flatMap(frontier -> frontier.contradictions().stream())
                        .map(Frontier.Contradiction::words)
                        .toList(),
                report.gains().stream().map(GainJson::of).toList(),
                report.notes(),
                report.cautions());
    }
}
