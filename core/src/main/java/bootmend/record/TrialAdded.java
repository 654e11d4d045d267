package bootmend.record;

import bootmend.trial.LogSummary;
import bootmend.trial.Trial;
import java.util.List;
import java.util.Optional;

/**
 * A trial that was kept.
 *
 * @param trial the trial
 * @param file where it is kept
 * @param log what its log came to
 * @param notes sentences on what is worth knowing about it
 */
public record TrialAdded(Trial trial, String file, Optional<LogSummary> log, List<String> notes) {

    public TrialAdded {
        notes = List.copyOf(notes);
    }
}
