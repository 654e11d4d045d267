package bootmend.record;

import bootmend.CardException;
import bootmend.trial.LogSummary;
import bootmend.trial.Trial;
import bootmend.trial.TrialStore;
import bootmend.workplace.Workplace;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Lists the trials on this computer. */
public final class TrialListJob {

    private final Workplace workplace;

    public TrialListJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** @param label of one board; empty for all */
    public TrialListing run(Optional<String> label) throws CardException {
        return run(TrialFilter.ofLabel(label));
    }

    public TrialListing run(TrialFilter filter) throws CardException {
        return listing(workplace.trials().read(), filter, false);
    }

    /** Those that were deleted and can be put back. */
    public TrialListing deleted(TrialFilter filter) throws CardException {
        return listing(workplace.trials().deleted(), filter, true);
    }

    private TrialListing listing(TrialStore.Content content, TrialFilter filter, boolean deleted) throws CardException {
        Predicate<Trial> wanted =
                filter.wanted(new TrialSettings(workplace).named(filter.settings()), ZoneId.systemDefault());
        List<Trial> of = filter.label().isEmpty()
                ? content.trials()
                : LabelledTrials.of(content.trials(), filter.label().get()).trials();
        List<Trial> trials = of.stream().filter(wanted).toList();
        int skipped = Math.max(0, trials.size() - filter.newest().orElse(Integer.MAX_VALUE));
        return new TrialListing(
                trials.stream()
                        .skip(skipped)
                        .map(trial -> listed(trial, deleted))
                        .toList(),
                content.problems(),
                content.trials().size());
    }

    private TrialListing.Listed listed(Trial trial, boolean deleted) {
        return new TrialListing.Listed(
                trial,
                (deleted
                                ? workplace.trials().deletedFile(trial)
                                : workplace.trials().file(trial))
                        .toString(),
                LogSummary.words(
                        trial.run().mask().orElse(0), workplace.tables().throttleBits()));
    }
}
