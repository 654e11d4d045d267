package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.record.TrialListing;
import bootmend.trial.Run;
import bootmend.trial.ThrottleMask;
import bootmend.trial.Trial;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Says what one trial was. */
public final class TrialWords {

    private static final String CLOCK = "arm_freq";
    private static final String VOLTAGE = "over_voltage";
    private static final String SHIFT = "over_voltage_delta";
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private final Words words;
    private final ZoneId zone;

    public TrialWords(Words words, ZoneId zone) {
        this.words = words;
        this.zone = zone;
    }

    public String when(Trial trial) {
        return WHEN.withZone(zone).format(trial.when());
    }

    /** The settings as the lines of a config file, or that it was at stock. */
    public String settings(Trial trial) {
        return trial.settings().isEmpty() ? words.of("trial.stock") : lines(trial, key -> true);
    }

    /** The clock that was set, in MHz; empty where it was at stock. */
    public String clock(Trial trial) {
        return value(trial, CLOCK);
    }

    /** The voltage step that was set, or the shift in microvolts; empty where the voltage was left to the board. */
    public String voltage(Trial trial) {
        String shift = value(trial, SHIFT);
        return value(trial, VOLTAGE) + (shift.isEmpty() ? "" : words.of("trial.shift", shift));
    }

    /** The settings besides these two. */
    public String others(Trial trial) {
        return lines(trial, key -> !key.equals(CLOCK) && !key.equals(VOLTAGE) && !key.equals(SHIFT));
    }

    private static String value(Trial trial, String key) {
        return Optional.ofNullable(trial.settings().get(key))
                .map(String::valueOf)
                .orElse("");
    }

    private static String lines(Trial trial, Predicate<String> shown) {
        return trial.settings().entrySet().stream()
                .filter(each -> shown.test(each.getKey()))
                .map(each -> each.getKey() + "=" + each.getValue())
                .collect(Collectors.joining(" "));
    }

    /** What it counts for, in one word. */
    public String counts(Trial trial) {
        return switch (trial.standing().kind()) {
            case HELD -> words.of(trial.isKnownGood() ? "counts.good" : "counts.held");
            case FAILED -> words.of("counts.failed");
            case THROTTLED -> words.of("counts.throttled");
            case UNDECIDED -> words.of("counts.undecided");
        };
    }

    /** One decimal where it has one; empty where it was not measured. */
    public static String number(OptionalDouble value) {
        return value.isEmpty()
                ? ""
                : String.format(Locale.ROOT, "%.1f", value.getAsDouble()).replaceFirst("\\.0$", "");
    }

    private static String volts(OptionalDouble value) {
        return value.isEmpty() ? "" : String.format(Locale.ROOT, "%.3f", value.getAsDouble());
    }

    public static String mask(Run run) {
        return run.mask().isPresent() ? ThrottleMask.text(run.mask().getAsLong()) : "";
    }

    /** All that is known of it, in sentences. */
    public String whole(TrialListing.Listed listed) {
        Trial trial = listed.trial();
        List<String> all = new ArrayList<>();
        all.add(words.of(
                "trial.what",
                when(trial),
                trial.unit().label(),
                trial.unit().board(),
                settings(trial),
                trial.outcome().word(),
                trial.standing().why()));
        add(all, "trial.minutes", number(trial.run().minutes()));
        all.add(words.of(trial.run().fullLoad() ? "trial.load" : "trial.loadnot"));
        add(all, "trial.peak", number(trial.run().peak()));
        add(all, "trial.clock", number(trial.run().clock()));
        add(
                all,
                "trial.mask",
                mask(trial.run()) + (listed.bits().isEmpty() ? "" : " (" + String.join(", ", listed.bits()) + ")"));
        add(all, "trial.cooling", trial.surroundings().cooling());
        add(all, "trial.supply", trial.surroundings().supply());
        add(all, "trial.ambient", number(trial.surroundings().ambient()));
        add(all, "trial.volts", volts(trial.run().volts()));
        add(all, "trial.from", trial.grounds().settings());
        trial.grounds().contradictions().forEach(each -> add(all, "trial.contradicted", each));
        add(all, "trial.notes", trial.notes());
        all.add(words.of("trial.file", listed.file()));
        return String.join(" ", all);
    }

    private void add(List<String> all, String key, String value) {
        if (!value.isEmpty()) {
            all.add(words.of(key, value));
        }
    }
}
