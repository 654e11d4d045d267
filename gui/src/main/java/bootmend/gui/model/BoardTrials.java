package bootmend.gui.model;

import bootmend.record.ChartView;
import bootmend.record.TrialReport;
import bootmend.record.TrialSide;
import java.util.Optional;

/**
 * What one board's trials come to.
 *
 * @param chart empty where no trial has a known clock and voltage step
 */
public record BoardTrials(TrialReport report, Optional<ChartView> chart) {

    static BoardTrials of(TrialReport report) {
        return new BoardTrials(
                report, report.trials().isEmpty() ? Optional.empty() : Optional.of(ChartView.of(report)));
    }

    /** With another board, or the same under another cooling, drawn beside. */
    static BoardTrials compared(TrialReport report, TrialReport other, TrialSide side) {
        return new BoardTrials(
                report,
                report.trials().isEmpty()
                        ? Optional.empty()
                        : Optional.of(ChartView.compared(report, other, side.words())));
    }
}
