package bootmend.record;

import bootmend.profile.Profile;
import java.util.List;
import java.util.Map;

/**
 * A profile, as a user is shown it.
 *
 * @param settings tuning key to value, in order
 * @param knownGood whether a passing trial backs it
 * @param evidence the trials that were made of it
 */
public record ProfileView(
        String name,
        String board,
        Map<String, String> settings,
        String cooling,
        String supply,
        boolean knownGood,
        List<EvidenceView> evidence,
        String notes) {

    /** One trial, as the profile keeps it; {@code passes} says whether it proves the settings. */
    public record EvidenceView(
            String trial, boolean holds, int minutes, boolean fullLoad, boolean throttled, boolean passes) {}

    static ProfileView of(Profile profile) {
        return new ProfileView(
                profile.name(),
                profile.board(),
                profile.settings(),
                profile.cooling(),
                profile.supply(),
                profile.isKnownGood(),
                profile.evidence().stream()
                        .map(each -> new EvidenceView(
                                each.trial(),
                                each.holds(),
                                each.minutes(),
                                each.fullLoad(),
                                each.throttled(),
                                each.passes()))
                        .toList(),
                profile.notes());
    }
}
