package bootmend.cli.json;

import bootmend.record.TrialReport;
import bootmend.trial.Advice;
import bootmend.trial.Frontier;
import bootmend.trial.Gain;
import bootmend.trial.HeatEstimate;
import bootmend.trial.Placed;
import bootmend.trial.Setting;
import bootmend.view.CautionView;
import java.util.List;
import java.util.Optional;

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
            SettingJson setting,
            String why,
            List<String> stops,
            Double peakDegC,
            Double uncertaintyDegC,
            String noPeak,
            SettingJson best,
            boolean bestKnownGood) {

        public static AdviceJson of(Advice advice) {
            Optional<HeatEstimate.Peak> peak = advice.peak();
            return new AdviceJson(
                    advice.action().word(),
                    SettingJson.of(advice.setting()),
                    advice.why(),
                    advice.stops(),
                    peak.map(HeatEstimate.Peak::celsius).orElse(null),
                    peak.map(HeatEstimate.Peak::uncertainty).orElse(null),
                    advice.noPeak(),
                    SettingJson.of(advice.best()),
                    advice.bestIsKnownGood());
        }
    }

    /** A setting by the config file's own keys. */
    record SettingJson(long arm_freq, long over_voltage) {

        public static SettingJson of(Optional<Setting> setting) {
            return setting.map(known -> new SettingJson(known.clock(), known.step()))
                    .orElse(null);
        }
    }

    /** A clock with the highest step that failed and the lowest that held; null where there is none. */
    record PointJson(long clockMHz, Long failedStep, String failedTrial, Long heldStep, String heldTrial) {

        public static PointJson of(Frontier.Point point) {
            return new PointJson(
                    point.clock(), step(point.failed()), id(point.failed()), step(point.held()), id(point.held()));
        }

        private static Long step(Optional<Placed> trial) {
            return trial.map(placed -> placed.setting().step()).orElse(null);
        }

        private static String id(Optional<Placed> trial) {
            return trial.map(placed -> placed.trial().id()).orElse(null);
        }
    }

    /** What more clock brought in one score; {@code stoppedPayingAtMHz} is null where the last step still paid. */
    record GainJson(String score, long baseClockMHz, List<Gain.Point> points, Long stoppedPayingAtMHz) {

        public static GainJson of(Gain gain) {
            return new GainJson(gain.score(), gain.baseClock(), gain.points(), Given.orNull(gain.stoppedPayingAt()));
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
