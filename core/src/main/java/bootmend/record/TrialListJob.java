package bootmend.record;

import bootmend.CardException;
import bootmend.trial.LogSummary;
import bootmend.trial.Trial;
import bootmend.trial.TrialStore;
import bootmend.workplace.Workplace;
import java.util.List;
import java.util.Optional;

/** Lists the trials on this computer. */
public final class TrialListJob {

    private final Workplace workplace;

    public TrialListJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** @param label of one board; empty for all */
    public TrialListing run(Optional<String> label) throws CardException {
        TrialStore.Content content = workplace.trials().read();
        List<Trial> trials = label.isEmpty()
                ? content.trials()
                : LabelledTrials.of(content.trials(), label.get()).trials();
        return new TrialListing(trials.stream().map(this::listed).toList(), content.problems());
    }

    private TrialListing.Listed listed(Trial trial) {
        return new TrialListing.Listed(
                trial,
                workplace.trials().file(trial).toString(),
                LogSummary.words(
                        trial.run().mask().orElse(0), workplace.tables().throttleBits()));
    }
}
