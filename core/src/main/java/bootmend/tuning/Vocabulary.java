package bootmend.tuning;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/** The tuning vocabulary: the keys whose active lines make a card tuned. */
public final class Vocabulary {

    private static final Map<String, Boolean> RESETS = Map.of("yes", true, "shown", false);
    private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);

    private static final Map<String, TuningKey.OneTime> ONE_TIME =
            Map.of("", TuningKey.OneTime.NEVER, "card", TuningKey.OneTime.FROM_CARD, "usb", TuningKey.OneTime.OVER_USB);

    private final Map<String, TuningKey> byName = new LinkedHashMap<>();
    private final Map<String, TuningKey> byLowerCase = new HashMap<>();
    private final Map<NamePattern, TuningKey> patterns = new LinkedHashMap<>();
    private final Map<String, List<TuningKey>> groups = new HashMap<>();

    private Vocabulary(List<TuningKey> keys) {
        for (TuningKey key : keys) {
            if (!key.published()) {
                patterns.put(NamePattern.of(key.key()), key);
                continue;
            }
            byName.put(key.key(), key);
            byLowerCase.put(key.key().toLowerCase(Locale.ROOT), key);
            key.sets()
                    .forEach(set -> groups.computeIfAbsent(set, name -> new ArrayList<>())
                            .add(key));
        }
    }

    static Vocabulary read(DataFile file, Sources sources) {
        DataFile checked = file.withColumns(
                "key",
                "group",
                "unit",
                "min",
                "max",
                "stock",
                "resets",
                "applies_to",
                "boards",
                "unclear",
                "sets",
                "clamped",
                "one_time",
                "source",
                "note");
        Vocabulary vocabulary = new Vocabulary(checked.map(row -> key(row, sources), TuningKey::key));
        checked.rows().forEach(vocabulary::checkSets);
        return vocabulary;
    }

    private static TuningKey key(DataRow row, Sources sources) {
        OptionalLong max = row.optionalNumber("max");
        boolean clamped = row.choice("clamped", YES_NO);
        if (clamped && max.isEmpty()) {
            throw row.error("a clamped key needs a max");
        }
        return new TuningKey(
                row.required("key"),
                row.required("group"),
                row.required("unit"),
                row.optionalNumber("min"),
                max,
                stock(row),
                row.choice("resets", RESETS),
                row.required("applies_to"),
                BoardSet.parse(row.words("boards"), row),
                BoardSet.parse(row.words("unclear"), row),
                row.words("sets"),
                clamped,
                row.choice("one_time", ONE_TIME),
                !row.text("key").contains(NamePattern.ANY),
                sources.citation(row, "source"),
                row.text("note"));
    }

    private static StockRule stock(DataRow row) {
        return switch (row.required("stock")) {
            case "per board" -> new StockRule.PerBoard();
            case "not published" -> new StockRule.NotPublished();
            default -> new StockRule.Plain(row.number("stock"));
        };
    }

    private void checkSets(DataRow row) {
        for (String set : row.words("sets")) {
            if (find(set).filter(key -> key.sets().isEmpty()).isEmpty()) {
                throw row.error("column sets names " + set + ", which is no key or sets keys itself");
            }
        }
    }

    /** The key that a row of a data file names; it may be a pattern. */
    Optional<TuningKey> row(String name) {
        return find(name)
                .or(() -> patterns.values().stream()
                        .filter(key -> key.key().equals(name))
                        .findFirst());
    }

    /** Every key that has a name of its own, in the data file's order. */
    public List<TuningKey> keys() {
        return List.copyOf(byName.values());
    }

    /** The keys that set this one among others, in the data file's order. */
    public List<TuningKey> groupsOf(String key) {
        return Collections.unmodifiableList(groups.getOrDefault(key, List.of()));
    }

    /** The key with exactly this name that is published, or known at least by it. */
    public Optional<TuningKey> find(String name) {
        return Optional.ofNullable(byName.get(name));
    }

    /** The same, or a key that nothing is known of but that its name is like that of a tuning key. */
    public Optional<TuningKey> findOnCard(String name) {
        TuningKey known = byName.get(name);
        if (known != null) {
            return Optional.of(known);
        }
        for (Map.Entry<NamePattern, TuningKey> each : patterns.entrySet()) {
            if (each.getKey().fits(name)) {
                return Optional.of(each.getValue().named(name));
            }
        }
        return Optional.empty();
    }

    /** The key that a name means if case is overlooked; the board does not overlook it. */
    public Optional<TuningKey> findIgnoringCase(String name) {
        return Optional.ofNullable(byLowerCase.get(name.toLowerCase(Locale.ROOT)));
    }
}
