package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.record.TrialAdded;
import bootmend.record.TrialListing;
import bootmend.trial.Run;
import bootmend.trial.ThrottleMask;
import bootmend.trial.Trial;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Prints trials. */
public final class TrialPage {

    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(ZoneId.systemDefault());
    private static final List<String> HEADER =
            List.of("when", "board", "settings", "outcome", "counts as", "min", "load", "peak", "mask");

    private final Screen screen;

    public TrialPage(Screen screen) {
        this.screen = screen;
    }

    public void added(TrialAdded added) {
        added.log().ifPresent(new LogPage(screen)::print);
        added.notes().forEach(screen::line);
        screen.line("Kept: " + added.file());
        screen.line("What to try next: bootmend trial advise --label "
                + quoted(added.trial().unit().label()));
    }

    public void list(TrialListing listing) {
        if (listing.trials().isEmpty()) {
            screen.line("No trial is kept here yet. Begin with `bootmend trial add`.");
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        List<String> styles = new ArrayList<>();
        for (TrialListing.Listed listed : listing.trials()) {
            rows.add(row(listed.trial()));
            styles.add("");
        }
        screen.table(HEADER, rows, styles);
        screen.blank();
        for (TrialListing.Listed listed : listing.trials()) {
            if (!listed.bits().isEmpty()) {
                screen.line(WHEN.format(listed.trial().when()) + "  "
                        + listed.trial().unit().label() + "  "
                        + ThrottleMask.text(listed.trial().run().mask().orElse(0)) + ": "
                        + String.join(", ", listed.bits()));
            }
        }
        screen.line(Amount.count(listing.trials().size(), "trial") + " in "
                + Path.of(listing.trials().get(0).file()).getParent() + ", one file each, yours to edit.");
    }

    private static List<String> row(Trial trial) {
        Run run = trial.run();
        return List.of(
                WHEN.format(trial.when()),
                trial.unit().label() + " (" + trial.unit().board() + ")",
                settings(trial.settings()),
                trial.outcome().word(),
                counts(trial),
                number(run.minutes()),
                run.fullLoad() ? "full" : "",
                number(run.peak()),
                run.mask().isPresent() ? ThrottleMask.text(run.mask().getAsLong()) : "");
    }

    private static String counts(Trial trial) {
        return switch (trial.verdict().kind()) {
            case HELD -> trial.isKnownGood() ? "known-good" : "held";
            case FAILED -> "failed";
            case THROTTLED -> "throttled";
            case UNDECIDED -> "undecided";
        };
    }

    private static String settings(Map<String, Long> settings) {
        return settings.isEmpty()
                ? "stock"
                : settings.entrySet().stream()
                        .map(setting -> setting.getKey() + "=" + setting.getValue())
                        .collect(Collectors.joining(" "));
    }

    /** One decimal where it has one. */
    static String number(OptionalDouble value) {
        return value.isEmpty()
                ? ""
                : String.format(Locale.ROOT, "%.1f", value.getAsDouble()).replaceFirst("\\.0$", "");
    }

    static String quoted(String label) {
        return label.matches("[A-Za-z0-9._-]+") ? label : "\"" + label + "\"";
    }
}
