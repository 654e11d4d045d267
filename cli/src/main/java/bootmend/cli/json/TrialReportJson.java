package bootmend.cli.json;

import bootmend.record.TrialReport;
import bootmend.trial.search.Advice;
import bootmend.trial.Frontier;
import bootmend.trial.Gain;
import bootmend.trial.HeatEstimate;
import bootmend.trial.Placed;
import bootmend.trial.Setting;
import bootmend.view.CautionView;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** What a board's trials come to as a JSON document. */
public record TrialReportJson(
        String label,
        String board,
        AdviceJson advice,
        List<PointJson> frontier,
        List<String> contradictions,
        List<GainJson> gains,
        List<String> notes,
        List<CautionView> cautions) {

    /** What to do next; {@code action} is "try", "run long", "mend" or "stop". */
    record AdviceJson(
            String action,
            Optional<Setting> setting,
            String why,
            List<String> stops,
            Optional<Double> peakDegC,
            Optional<Double> uncertaintyDegC,
            String noPeak,
            Optional<Setting> best,
            boolean bestKnownGood) {

        public static AdviceJson of(Advice advice) {
            Optional<HeatEstimate.Peak> peak = advice.peak();
            return new AdviceJson(
                    advice.action().word(),
                    advice.setting(),
                    advice.why(),
                    advice.stops(),
                    peak.map(HeatEstimate.Peak::celsius),
                    peak.map(HeatEstimate.Peak::uncertainty),
                    advice.noPeak(),
                    advice.best(),
                    advice.bestIsKnownGood());
        }
    }

    /** A clock with the highest step that failed and the lowest that held; null where there is none. */
    record PointJson(
            long clockMHz,
            Optional<Long> failedStep,
            Optional<String> failedTrial,
            Optional<Long> heldStep,
            Optional<String> heldTrial) {

        public static PointJson of(Frontier.Point point) {
            return new PointJson(
                    point.clock(), step(point.failed()), id(point.failed()), step(point.held()), id(point.held()));
        }

        private static Optional<Long> step(Optional<Placed> trial) {
            return trial.map(placed -> placed.setting().step());
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
                report.frontier().points().stream().map(PointJson::of).toList(),
                report.frontier().contradictions().stream()
                        .map(Frontier.Contradiction::words)
                        .toList(),
                report.gains().stream().map(GainJson::of).toList(),
                report.notes(),
                report.cautions());
    }
}
