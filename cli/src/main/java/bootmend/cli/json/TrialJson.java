package bootmend.cli.json;

import bootmend.CardException;
import bootmend.record.TrialAdded;
import bootmend.record.TrialListing;
import bootmend.trial.LogSummary;
import bootmend.trial.Trial;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Optional;

/** A trial as a JSON document, with the file that it is kept in. */
public record TrialJson(String file, @JsonUnwrapped Trial trial) {

    /** A trial that was kept; {@code log} is null where it has none. */
    public record AddedJson(TrialJson trial, Optional<LogSummary> log, List<String> notes) {

        public static AddedJson of(TrialAdded added) {
            return new AddedJson(new TrialJson(added.file(), added.trial()), added.log(), added.notes());
        }
    }

    /** The trials of a store, and what is wrong with files that could not be read. */
    public record ListJson(List<TrialJson> trials, List<CardException> problems) {

        public static ListJson of(TrialListing listing) {
            return new ListJson(
                    listing.trials().stream()
                            .map(listed -> new TrialJson(listed.file(), listed.trial()))
                            .toList(),
                    listing.problems());
        }
    }
}
