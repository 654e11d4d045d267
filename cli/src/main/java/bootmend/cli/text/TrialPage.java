package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.record.TrialAdded;
import bootmend.record.TrialFilter;
import bootmend.record.TrialListing;
import bootmend.trial.Run;
import bootmend.trial.ThrottleMask;
import bootmend.trial.Trial;
import bootmend.trial.TrialStore;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
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
            List.of("id", "when", "board", "settings", "outcome", "counts as", "min", "load", "peak", "mask");

    private final Screen screen;

    public TrialPage(Screen screen) {
        this.screen = screen;
    }

    public void added(TrialAdded added) {
        added.log().ifPresent(new LogPage(screen)::print);
        added.notes().forEach(screen::line);
        screen.line("Kept: " + added.file());
        screen.exact("What to try next: bootmend trial advise --label "
                + quoted(added.trial().unit().label()));
    }

    public void edited(TrialAdded edited) {
        edited.log().ifPresent(new LogPage(screen)::print);
        edited.notes().forEach(screen::line);
        screen.table(HEADER, List.of(row(edited.trial())));
        screen.line("Kept: " + edited.file());
    }

    public void list(TrialListing listing) {
        if (listing.all() == 0) {
            screen.line("No trial is kept here yet. Begin with `bootmend trial add`.");
            return;
        }
        if (listing.trials().isEmpty()) {
            screen.line("None of " + Amount.count(listing.all(), "trial") + " is as you asked for.");
            return;
        }
        screen.table(
                HEADER,
                listing.trials().stream().map(listed -> row(listed.trial())).toList());
        screen.blank();
        for (TrialListing.Listed listed : listing.trials()) {
            remark(listed);
        }
        String of = listing.trials().size() == listing.all() ? "" : " of " + listing.all();
        screen.line(Amount.count(listing.trials().size(), "trial") + of + " in "
                + Path.of(listing.trials().get(0).file()).getParent() + ", one file each, yours to edit.");
    }

    private void remark(TrialListing.Listed listed) {
        String head = WHEN.format(listed.trial().when()) + "  "
                + listed.trial().unit().label() + "  ";
        if (!listed.bits().isEmpty()) {
            screen.line(head
                    + ThrottleMask.text(listed.trial().run().mask().orElse(0)) + ": "
                    + String.join(", ", listed.bits()));
        }
        listed.trial().grounds().contradictions().forEach(each -> screen.line(head + each));
    }

    private static List<String> row(Trial trial) {
        Run run = trial.run();
        return List.of(
                TrialStore.shortId(trial),
                WHEN.format(trial.when()),
                trial.unit().label() + " (" + trial.unit().board() + ")",
                settings(trial.settings()),
                trial.outcome().word(),
                TrialFilter.counts(trial),
                number(run.minutes()),
                run.fullLoad() ? "full" : "",
                number(run.peak()),
                run.mask().isPresent() ? ThrottleMask.text(run.mask().getAsLong()) : "");
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
