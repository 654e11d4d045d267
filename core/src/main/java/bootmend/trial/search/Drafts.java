package bootmend.trial.search;

import bootmend.trial.HeatEstimate;
import bootmend.trial.Placed;
import bootmend.trial.Setting;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Puts advice together: what is said of every one alike.
 *
 * @param limits to estimate a peak by
 * @param best the best that held
 */
record Drafts(Limits limits, Optional<Placed> best) {

    /** Advice on one setting, of which no chance is worked out. */
    Advice of(Advice.Action action, Optional<Setting> setting, double minutes, String why, List<String> stops) {
        return of(action, setting, minutes, OptionalDouble.empty(), why, "", List.of(), List.of(), stops);
    }

    Advice of(
            Advice.Action action,
            Optional<Setting> setting,
            double minutes,
            OptionalDouble chance,
            String why,
            String change,
            List<Advice.Outlook> outcomes,
            List<Setting> behind,
            List<String> stops) {
        Optional<HeatEstimate.Peak> peak = setting.flatMap(limits::peak);
        return new Advice(
                action,
                setting,
                setting.isPresent() ? OptionalDouble.of(minutes) : OptionalDouble.empty(),
                chance,
                why,
                change,
                outcomes,
                behind,
                stops,
                peak,
                setting.isEmpty() || peak.isPresent() ? "" : limits.noPeak(),
                best.map(Placed::setting),
                best.map(placed -> placed.trial().isKnownGood()).orElse(false));
    }

    /** The end of a search: a known-good setting to be kept. */
    Advice keep(Setting kept, String why, List<String> stops) {
        return new Advice(
                Advice.Action.STOP,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                why,
                "",
                List.of(),
                List.of(),
                stops,
                Optional.empty(),
                "",
                Optional.of(kept),
                true);
    }
}
