package bootmend.view;

import bootmend.card.ConfigFile;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import bootmend.config.ReachedLine;
import bootmend.config.Truth;
import bootmend.edit.WantedSetting;
import bootmend.tuning.Board;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What boards make of two config files, and where that differs. */
final class ConfigComparison {

    /** How many values of one key are told. No source: a bound against hostile cards. */
    private static final int MOST_VALUES = 32;

    private final TuningTables tables;
    private final Resolver resolver;
    private final ComparedConfig left;
    private final ComparedConfig right;

    ConfigComparison(TuningTables tables, ComparedConfig left, ComparedConfig right) {
        this.tables = tables;
        this.resolver = new Resolver(tables);
        this.left = left;
        this.right = right;
    }

    /** The differences on these boards, those with the same ones together. */
    List<CompareView.OnBoards> on(List<Board> boards) {
        Map<CompareView.OnBoards, List<String>> alike = new LinkedHashMap<>();
        for (Board board : boards) {
            Resolution a = resolve(left, board);
            Resolution b = resolve(right, board);
            List<CompareView.Setting> tuning = differences(tuning(a), tuning(b));
            List<CompareView.Setting> other =
                    left.tuningAlone() || right.tuningAlone() ? List.of() : differences(other(a), other(b));
            if (!tuning.isEmpty() || !other.isEmpty()) {
                alike.computeIfAbsent(new CompareView.OnBoards(List.of(), tuning, other), none -> new ArrayList<>())
                        .add(board.id());
            }
        }
        return alike.entrySet().stream()
                .map(each -> new CompareView.OnBoards(
                        each.getValue(), each.getKey().tuning(), each.getKey().other()))
                .toList();
    }

    /** Whether all config files are the same to the byte. */
    boolean isSameToTheByte() {
        List<ConfigFile> a = left.files().all();
        List<ConfigFile> b = right.files().all();
        boolean same = a.size() == b.size() && !left.tuningAlone() && !right.tuningAlone();
        for (int i = 0; same && i < a.size(); i++) {
            same = a.get(i).path().equalsIgnoreCase(b.get(i).path())
                    && Arrays.equals(a.get(i).bytes(), b.get(i).bytes());
        }
        return same;
    }

    private Resolution resolve(ComparedConfig side, Board board) {
        return resolver.resolve(
                side.files().main().path(),
                side.files().main().document(),
                side.files().includes(),
                BoardFacts.of(board));
    }

    /** Beside a profile, what no profile keeps is not told. */
    private Map<String, String> tuning(Resolution resolution) {
        Map<String, String> values = new LinkedHashMap<>();
        for (Effective each : resolution.effective()) {
            boolean kept = tables.vocabulary()
                    .findOnCard(each.chosen().setBy())
                    .filter(TuningKey::isKept)
                    .isPresent();
            if (each.state() != EffectiveState.IGNORED && (kept || !left.tuningAlone() && !right.tuningAlone())) {
                values.put(
                        each.key(),
                        each.state() == EffectiveState.SET
                                ? each.value()
                                : each.value() + ", depends on " + String.join(", ", each.dependsOn()));
            }
        }
        return values;
    }

    /** Everything but tuning that the board reads, by what it is about. */
    private Map<String, String> other(Resolution resolution) {
        Map<String, List<String>> values = new LinkedHashMap<>();
        for (ReachedLine line : resolution.reading().lines()) {
            if (line.condition().truth() == Truth.FALSE) {
                continue;
            }
            String when = line.condition().truth() == Truth.TRUE
                    ? ""
                    : ", depends on " + String.join(", ", line.condition().dependsOn());
            if (line.line().kind() instanceof LineKind.Setting setting) {
                for (WantedSetting part : WantedSetting.of(setting)) {
                    if (!isTuning(part)) {
                        boolean replaces = !part.addsUp() && when.isEmpty();
                        add(values, part.subject(), part.value() + when, replaces);
                    }
                }
            } else if (line.line().kind() instanceof LineKind.Other) {
                add(values, firstWord(line.line()), line.line().text().strip() + when, false);
            }
        }
        Map<String, String> joined = new LinkedHashMap<>();
        values.forEach((key, each) -> joined.put(key, String.join("; ", each)));
        return joined;
    }

    /** An overlay's own line is told whole, whichever of its parameters tune. */
    private boolean isTuning(WantedSetting part) {
        return !part.addsUp() && tables.vocabulary().findOnCard(part.subject()).isPresent();
    }

    private static void add(Map<String, List<String>> values, String key, String value, boolean replaces) {
        List<String> all = values.computeIfAbsent(key, none -> new ArrayList<>());
        if (replaces) {
            all.clear();
        }
        if (all.size() < MOST_VALUES) {
            all.add(value);
        }
    }

    private static String firstWord(ConfigLine line) {
        return line.text().strip().split("\\s", 2)[0];
    }

    private static List<CompareView.Setting> differences(Map<String, String> a, Map<String, String> b) {
        Set<String> keys = new LinkedHashSet<>(a.keySet());
        keys.addAll(b.keySet());
        return keys.stream()
                .map(key ->
                        new CompareView.Setting(key, Optional.ofNullable(a.get(key)), Optional.ofNullable(b.get(key))))
                .filter(each -> !each.left().equals(each.right()))
                .toList();
    }
}
