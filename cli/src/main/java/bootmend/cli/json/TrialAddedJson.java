package bootmend.cli.json;

import bootmend.record.TrialAdded;
import java.util.List;

/** A trial that was kept as a JSON document; {@code log} is null where it has none. */
public record TrialAddedJson(TrialJson trial, LogJson log, List<String> notes) {

    public static TrialAddedJson of(TrialAdded added) {
        return new TrialAddedJson(
                TrialJson.of(added.trial(), added.file()),
                added.log().map(LogJson::of).orElse(null),
                added.notes());
    }
}
