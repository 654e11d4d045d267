package bootmend.record;

import bootmend.trial.Frontier;
import bootmend.trial.Gain;
import bootmend.trial.Placed;
import bootmend.trial.StepLimits;
import bootmend.trial.Unit;
import bootmend.trial.search.Advice;
import bootmend.trial.search.Chances;
import bootmend.view.CautionView;
import java.util.List;
import java.util.Optional;

/**
 * What a board's trials come to.
 *
 * @param unit the board
 * @param trials those that have a place by clock and voltage, oldest first
 * @param frontiers what it is known to need, one for each way that its voltage was set; first the one that advice goes by
 * @param advice what to do next
 * @param chances how likely settings on the first frontier's axis are to hold; empty where nothing can be said
 * @param limits how far the voltage step may go
 * @param gains what more clock brought, by score
 * @param notes sentences on trials that were left out or put together
 * @param cautions where it can hurt
 */
public record TrialReport(
        Unit unit,
        List<Placed> trials,
        List<Frontier> frontiers,
        Advice advice,
        Optional<Chances> chances,
        StepLimits limits,
        List<Gain> gains,
        List<String> notes,
        List<CautionView> cautions) {

    public TrialReport {
        trials = List.copyOf(trials);
        frontiers = List.copyOf(frontiers);
        gains = List.copyOf(gains);
        notes = List.copyOf(notes);
        cautions = List.copyOf(cautions);
    }

    /** The frontier on the voltage axis that advice goes by. */
    public Frontier frontier() {
        return frontiers.get(0);
    }
}
