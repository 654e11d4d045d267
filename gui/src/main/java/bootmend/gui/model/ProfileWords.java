package bootmend.gui.model;

import bootmend.config.VisibleText;
import bootmend.gui.text.Words;
import bootmend.record.ProfileView;
import java.util.List;
import java.util.stream.Collectors;

/** Says how a profile stands. */
public final class ProfileWords {

    private final Words words;

    public ProfileWords(Words words) {
        this.words = words;
    }

    /** Known-good or unproven, and why, in a sentence. */
    public String standing(ProfileView profile) {
        if (profile.knownGood()) {
            return words.of("profile.good");
        }
        return words.of(profile.evidence().isEmpty() ? "profile.unproven.none" : "profile.unproven.some");
    }

    /** One trial, in a sentence. */
    public String evidence(ProfileView.EvidenceView trial) {
        List<String> parts = List.of(
                words.of(trial.holds() ? "profile.held" : "profile.heldnot", trial.minutes()),
                words.of(trial.fullLoad() ? "profile.load" : "profile.loadnot"),
                words.of(trial.throttled() ? "profile.throttled" : "profile.throttlednot"));
        return words.of(
                trial.passes() ? "profile.proves" : "profile.provesnot", trial.trial(), String.join(", ", parts));
    }

    /** As the lines of a config file; control characters are visible. */
    public static String settings(ProfileView profile, String between) {
        return profile.settings().entrySet().stream()
                .map(each -> VisibleText.of(each.getKey() + "=" + each.getValue()))
                .collect(Collectors.joining(between));
    }
}
