package bootmend.earlier;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import bootmend.tuning.Assignment;
import bootmend.tuning.StockReset;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.Vocabulary;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Makes the active tuning lines of a config file those of an earlier version, section by section, for whatever board: lines
 * that are alike stay, a value that differs is set, a line that was commented out since is live again, what is missing is
 * added to its section, and what that version did not have is commented out. Every other line stays byte for byte.
 *
 * <p>Lines that can write a bit of a chip that stays are left as they are. Doing it twice changes nothing the second time.
 */
public final class EarlierTuning {

    private static final String ALL = "[all]";

    private final Vocabulary vocabulary;

    public EarlierTuning(Vocabulary vocabulary) {
        this.vocabulary = vocabulary;
    }

    /** A tuning line that is wanted. */
    private record Wanted(String section, String key, String value) {

        static Wanted of(TuningLine line) {
            return new Wanted(plain(line.section()), line.key(), line.value());
        }

        boolean hasSpotOf(Wanted other) {
            return section.equals(other.section) && key.equals(other.key);
        }

        String text() {
            return key + "=" + value;
        }
    }

    /** Nothing stands above lines for all boards, or a section that lifts every other. */
    private static String plain(Optional<String> section) {
        return section.filter(text -> !text.equals(ALL)).orElse("");
    }

    /** Whether a key's lines are put back; the only keys for which a board's own memory is not at risk. */
    public static boolean isPutBack(TuningKey key) {
        return key.oneTime() == TuningKey.OneTime.NEVER && key.tunes() && (key.resets() || key.isKept());
    }

    /**
     * The present document with the tuning lines of {@code then}.
     *
     * @throws IllegalArgumentException where a line of {@code then} is longer than a board reads
     */
    public ConfigDocument apply(ConfigDocument now, ConfigDocument then) {
        List<Wanted> missing =
                new ArrayList<>(lines(then).stream().map(Wanted::of).toList());
        List<TuningLine> spare = new ArrayList<>();
        for (TuningLine line : lines(now)) {
            if (!missing.remove(Wanted.of(line))) {
                spare.add(line);
            }
        }
        ConfigDocument changed = setValues(now, spare, missing);
        changed = commentOut(changed, spare);
        changed = uncomment(changed, missing);
        for (Wanted wanted : missing) {
            changed = add(changed, wanted);
        }
        return changed;
    }

    private List<TuningLine> lines(ConfigDocument document) {
        return TuningLines.find(document, vocabulary).stream()
                .filter(line -> line.isActive() && isPutBack(line.tuningKey()))
                .toList();
    }

    private static ConfigDocument setValues(ConfigDocument now, List<TuningLine> spare, List<Wanted> missing) {
        ConfigDocument changed = now;
        for (Iterator<TuningLine> lines = spare.iterator(); lines.hasNext(); ) {
            TuningLine line = lines.next();
            Optional<Wanted> wanted = missing.stream()
                    .filter(each -> each.hasSpotOf(Wanted.of(line)))
                    .findFirst();
            ConfigLine there = changed.line(line.lineNumber());
            if (wanted.isPresent() && !there.isPastLimit() && there.kind() instanceof LineKind.Setting setting) {
                changed = changed.setValue(
                        line.lineNumber(),
                        Assignment.with(setting, line.key(), wanted.get().value()));
                missing.remove(wanted.get());
                lines.remove();
            }
        }
        return changed;
    }

    private static ConfigDocument commentOut(ConfigDocument document, List<TuningLine> spare) {
        Map<Integer, Set<String>> keys = new TreeMap<>();
        spare.forEach(line -> keys.computeIfAbsent(line.lineNumber(), none -> new LinkedHashSet<>())
                .add(line.tuningKey().key()));
        return StockReset.apply(document, StockReset.of(document, keys), false);
    }

    /** Makes lines live again that stand in their section with a sign before them. */
    private static ConfigDocument uncomment(ConfigDocument document, List<Wanted> missing) {
        ConfigDocument changed = document;
        for (ConfigLine line : document.lines()) {
            if (line.kind() instanceof LineKind.CommentedSetting commented) {
                Wanted written = new Wanted(plain(line.section()), commented.key(), commented.value());
                if (line.text().equals("#" + written.text()) && missing.remove(written)) {
                    changed = replace(changed, line.number(), written.text());
                }
            }
        }
        return changed;
    }

    private static ConfigDocument replace(ConfigDocument document, int number, String text) {
        return document.insertAfter(number, List.of(text)).remove(number);
    }

    private static ConfigDocument add(ConfigDocument document, Wanted wanted) {
        List<ConfigLine> lines = document.lines();
        int last = -1;
        for (ConfigLine line : lines) {
            boolean there = plain(line.section()).equals(wanted.section());
            if (there && !(line.kind() instanceof LineKind.Blank) && !(line.kind() instanceof LineKind.Section)) {
                last = line.number();
            }
        }
        Optional<String> end = lines.isEmpty() ? Optional.empty() : sectionAtEnd(lines.get(lines.size() - 1));
        if (last >= 0) {
            return document.insertAfter(last, List.of(wanted.text()));
        }
        if (plain(end).equals(wanted.section())) {
            return document.append(List.of(wanted.text()));
        }
        return wanted.section().isEmpty()
                ? document.append(List.of(ALL, wanted.text()))
                : document.append(List.of(wanted.section(), wanted.text(), ALL));
    }

    private static Optional<String> sectionAtEnd(ConfigLine last) {
        return last.kind() instanceof LineKind.Section section ? Optional.of(section.raw()) : last.section();
    }
}
