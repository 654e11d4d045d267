package bootmend.view;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineEdit;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.Vocabulary;
import java.util.ArrayList;
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

    /** How many lines differ that are no tuning lines, live or commented out; a line that was changed counts once. */
    int others(ConfigDocument then, ConfigDocument now) {
        Set<Integer> tuningThen = numbers(then);
        Set<Integer> tuningNow = numbers(now);
        int others = 0;
        for (LineEdit<ConfigLine> edit :
                LineEdit.between(then.lines(), now.lines(), (a, b) -> a.text().equals(b.text()))) {
            long old = edit.old().stream()
                    .filter(line -> !tuningThen.contains(line.number()))
                    .count();
            long changed = edit.changed().stream()
                    .filter(line -> !tuningNow.contains(line.number()))
                    .count();
            others += (int) Math.max(old, changed);
        }
        return others;
    }

    private Set<Integer> numbers(ConfigDocument document) {
        return TuningLines.find(document, vocabulary).stream()
                .map(TuningLine::lineNumber)
                .collect(Collectors.toSet());
    }
}
