package bootmend.earlier;

import bootmend.tuning.DataFile;
import bootmend.tuning.Vocabulary;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The keys by which a text is known to be a config file. */
final class ConfigKeys {

    private static final String ANY = "*";
    /** How many answers are kept; a bound against hostile cards. */
    private static final int MOST_ASKED = 10_000;

    private final Vocabulary vocabulary;
    private final Set<String> names = new HashSet<>();
    private final List<String> beginnings;
    private final Map<String, Boolean> asked = new HashMap<>();

    private ConfigKeys(Vocabulary vocabulary, List<String> keys) {
        this.vocabulary = vocabulary;
        keys.stream().filter(key -> !key.endsWith(ANY)).forEach(names::add);
        this.beginnings = keys.stream()
                .filter(key -> key.endsWith(ANY))
                .map(key -> key.substring(0, key.length() - ANY.length()))
                .toList();
    }

    /** @throws bootmend.tuning.DataFileException if the data file is damaged */
    static ConfigKeys load(Vocabulary vocabulary) {
        DataFile file = DataFile.resource(ConfigKeys.class, "config-keys.csv").withColumns("key", "source");
        return new ConfigKeys(vocabulary, file.map(row -> row.required("key"), key -> key));
    }

    /** Whether a config file is where a line with this key belongs; a port may follow behind a colon. */
    boolean knows(String key) {
        int colon = key.indexOf(':');
        String name = colon > 0 ? key.substring(0, colon) : key;
        if (asked.size() > MOST_ASKED) {
            asked.clear();
        }
        return asked.computeIfAbsent(name, this::isKnown);
    }

    private boolean isKnown(String name) {
        return names.contains(name)
                || beginnings.stream().anyMatch(name::startsWith)
                || vocabulary.findOnCard(name).isPresent();
    }
}
