package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.record.ProfileView;
import bootmend.record.SettingDifference;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Prints profiles and what they differ in. */
public final class ProfilePage {

    private static final String STOCK = "stock";

    private final Screen screen;

    public ProfilePage(Screen screen) {
        this.screen = screen;
    }

    public void list(List<ProfileView> profiles) {
        if (profiles.isEmpty()) {
            screen.line("There is no profile yet. Save one from a card: bootmend profile save NAME CARD --board B");
            return;
        }
        screen.table(
                List.of("name", "board", "settings", "standing"),
                profiles.stream()
                        .map(each -> List.of(each.name(), each.board(), settings(each), standing(each)))
                        .toList(),
                profiles.stream().map(each -> "").toList());
    }

    public void print(ProfileView profile) {
        field("profile", profile.name() + ", " + standing(profile));
        field("board", profile.board());
        profile.settings().forEach((key, value) -> field("setting", key + "=" + value));
        field("cooling", profile.cooling());
        field("supply", profile.supply());
        for (ProfileView.EvidenceView each : profile.evidence()) {
            field(
                    "evidence",
                    each.trial() + ": " + (each.holds() ? "held" : "did not hold") + " "
                            + Amount.count(each.minutes(), "minute")
                            + (each.fullLoad() ? " under full load" : ", not under full load")
                            + (each.throttled() ? ", throttled" : ""));
        }
        field("notes", profile.notes());
    }

    /** @param right what the second column is, a profile or a card */
    public void compare(String left, String right, List<SettingDifference> differences) {
        if (differences.isEmpty()) {
            screen.line(left + " and " + right + " have the same settings.");
            return;
        }
        screen.table(
                List.of("key", left, right),
                differences.stream()
                        .map(each -> List.of(
                                each.key(),
                                each.left().orElse(STOCK),
                                each.right().orElse(STOCK)))
                        .toList(),
                differences.stream().map(each -> "").toList());
    }

    private static String settings(ProfileView profile) {
        return profile.settings().entrySet().stream()
                .map(each -> each.getKey() + "=" + each.getValue())
                .collect(Collectors.joining(" "));
    }

    private static String standing(ProfileView profile) {
        return profile.knownGood() ? "known-good" : "unproven";
    }

    private void field(String name, String text) {
        if (!text.isEmpty()) {
            screen.line(String.format(Locale.ROOT, "%-16s%s", name, text));
        }
    }
}
