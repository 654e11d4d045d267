package bootmend.record;

import bootmend.trial.Advice;
import bootmend.trial.Frontier;
import bootmend.trial.Gain;
import bootmend.trial.Placed;
import bootmend.trial.StepLimits;
import bootmend.trial.Unit;
import bootmend.view.CautionView;
import java.util.List;

/**
 * What a board's trials come to.
 *
 * @param unit the board
 * @param trials those that have a place by clock and voltage step, oldest first
 * @param frontier what it is known to need
 * @param advice what to do next
 * @param limits how far the voltage step may go
 * @param gains what more clock brought, by score
 * @param notes sentences on trials that were left out or put together
 * @param cautions where it can hurt
 */
public record TrialReport(
        Unit unit,
        List<Placed> trials,
        Frontier frontier,
        Advice advice,
        StepLimits limits,
        List<Gain> gains,
        List<String> notes,
        List<CautionView> cautions) {

    public TrialReport {
        trials = List.copyOf(trials);
        gains = List.copyOf(gains);
        notes = List.copyOf(notes);
        cautions = List.copyOf(cautions);
    }
}
