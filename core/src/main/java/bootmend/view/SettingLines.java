package bootmend.view;

import bootmend.config.ConfigDocument;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Compares the tuning lines of texts of one config file; includes are not followed. */
final class SettingLines {

    private static final String ALL = "[all]";

    private final Vocabulary vocabulary;

    SettingLines(Vocabulary vocabulary) {
        this.vocabulary = vocabulary;
    }

    private record Spot(String section, String key) {}

    private List<TuningLine> active(ConfigDocument document) {
        return TuningLines.find(document, vocabulary).stream()
                .filter(TuningLine::isActive)
                .toList();
    }

    /** Key to value, of a key that several lines set the last. */
    Map<String, String> settings(ConfigDocument document) {
        Map<String, String> settings = new LinkedHashMap<>();
        active(document).forEach(line -> settings.put(line.key(), line.value()));
        return settings;
    }

    private Map<Spot, String> bySection(ConfigDocument document) {
        Map<Spot, String> lines = new LinkedHashMap<>();
        for (TuningLine line : active(document)) {
            lines.put(
                    new Spot(
                            line.section()
                                    .filter(section -> !section.equals(ALL))
                                    .orElse(""),
                            line.key()),
                    line.value());
        }
        return lines;
    }

    /** Tuning lines that differ, in the order of the earlier text, then of the present one. */
    List<SettingChange> changes(ConfigDocument then, ConfigDocument now) {
        Map<Spot, String> before = bySection(then);
        Map<Spot, String> after = bySection(now);
        List<SettingChange> changes = new ArrayList<>();
        before.forEach((spot, value) -> {
            Optional<String> present = Optional.ofNullable(after.get(spot));
            if (!present.equals(Optional.of(value))) {
                changes.add(new SettingChange(spot.section(), spot.key(), Optional.of(value), present));
            }
        });
        after.forEach((spot, value) -> {
            if (!before.containsKey(spot)) {
                changes.add(new SettingChange(spot.section(), spot.key(), Optional.empty(), Optional.of(value)));
            }
        });
        return changes;
    }

    /**
     * How many lines, other than tuning lines that are live or commented out, only one of the texts has; a line that was
     * changed counts once, and one that was moved not at all.
     */
    int others(ConfigDocument then, ConfigDocument now) {
        Map<String, Integer> more = new HashMap<>();
        count(then, 1, more);
        count(now, -1, more);
        int gone = more.values().stream()
                .filter(count -> count > 0)
                .mapToInt(count -> count)
                .sum();
        int added = more.values().stream()
                .filter(count -> count < 0)
                .mapToInt(count -> -count)
                .sum();
        return Math.max(gone, added);
    }

    private void count(ConfigDocument document, int each, Map<String, Integer> counts) {
        Set<Integer> tuning = numbers(document);
        document.lines().stream()
                .filter(line -> !tuning.contains(line.number()))
                .forEach(line -> counts.merge(line.text(), each, Integer::sum));
    }

    private Set<Integer> numbers(ConfigDocument document) {
        return TuningLines.find(document, vocabulary).stream()
                .map(TuningLine::lineNumber)
                .collect(Collectors.toSet());
    }
}
