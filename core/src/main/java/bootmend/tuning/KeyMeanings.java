package bootmend.tuning;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What each tuning key does, in plain words. */
public final class KeyMeanings {

    private final Map<String, String> byKey;

    private KeyMeanings(Map<String, String> byKey) {
        this.byKey = byKey;
    }

    /** One row of the data file. */
    private record Meaning(String key, String text) {}

    static KeyMeanings read(DataFile file, Vocabulary vocabulary) {
        return new KeyMeanings(file
                .withColumns("key", "meaning", "source")
                .map(
                        row -> {
                            if (vocabulary.row(row.required("key")).isEmpty()) {
                                throw row.error(row.text("key") + " is no key");
                            }
                            return new Meaning(row.text("key"), row.required("meaning"));
                        },
                        Meaning::key)
                .stream()
                .collect(Collectors.toMap(Meaning::key, Meaning::text)));
    }

    /** Whole sentences; empty where bootmend has none. */
    public Optional<String> of(String key) {
        return Optional.ofNullable(byKey.get(key));
    }
}
