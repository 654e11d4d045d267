package bootmend.cli.json;

import bootmend.record.TrialListing;
import bootmend.trial.ThrottleMask;
import bootmend.trial.Trial;
import bootmend.trial.Verdict;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A trial as a JSON document; null is what was not measured. {@code counts} is {@code failed}, {@code held},
 * {@code throttled} or {@code undecided}.
 */
public record TrialJson(
        String id,
        String file,
        String when,
        String board,
        String label,
        Map<String, Long> settings,
        String outcome,
        String counts,
        String why,
        boolean knownGood,
        Double minutes,
        boolean fullLoad,
        Double peakDegC,
        Double clockMHz,
        String throttleMask,
        Map<String, Double> scores,
        String cooling,
        String supply,
        Double ambientDegC,
        String notes) {

    static TrialJson of(Trial trial, String file) {
        Verdict verdict = trial.verdict();
        Long mask = Given.orNull(trial.run().mask());
        return new TrialJson(
                trial.id(),
                file,
                trial.when().toString(),
                trial.unit().board(),
                trial.unit().label(),
                trial.settings(),
                trial.outcome().word(),
                verdict.kind().name().toLowerCase(Locale.ROOT),
                verdict.why(),
                trial.isKnownGood(),
                Given.orNull(trial.run().minutes()),
                trial.run().fullLoad(),
                Given.orNull(trial.run().peak()),
                Given.orNull(trial.run().clock()),
                mask == null ? null : ThrottleMask.text(mask),
                trial.scores(),
                trial.surroundings().cooling(),
                trial.surroundings().supply(),
                Given.orNull(trial.surroundings().ambient()),
                trial.notes());
    }

    /** The trials of a store, and what is wrong with files that could not be read. */
    public record ListJson(List<TrialJson> trials, List<ErrorJson.Told> problems) {

        public static ListJson of(TrialListing listing) {
            return new ListJson(
                    listing.trials().stream()
                            .map(listed -> TrialJson.of(listed.trial(), listed.file()))
                            .toList(),
                    listing.problems().stream()
                            .map(problem -> ErrorJson.error("", problem))
                            .toList());
        }
    }
}
