package bootmend.tuning;

import bootmend.config.Truth;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How far keys' values are published to reach. */
public final class Reaches {

    private static final Map<String, Reach.Kind> KINDS =
            Stream.of(Reach.Kind.values()).collect(Collectors.toMap(Reach.Kind::word, Function.identity()));

    private final List<Reach> all;

    private Reaches(List<Reach> all) {
        this.all = all;
    }

    static Reaches read(DataFile file, Vocabulary vocabulary, Sources sources) {
        return new Reaches(file.withColumns("key", "boards", "min", "max", "kind", "why", "source")
                .map(row -> reach(row, vocabulary, sources), Function.identity()));
    }

    private static Reach reach(DataRow row, Vocabulary vocabulary, Sources sources) {
        if (vocabulary.find(row.required("key")).isEmpty()) {
            throw row.error(row.text("key") + " is no key");
        }
        return new Reach(
                row.text("key"),
                BoardSet.parse(row.words("boards"), row),
                row.optionalNumber("min"),
                row.optionalNumber("max"),
                row.choice("kind", KINDS),
                row.required("why"),
                sources.citation(row, "source"));
    }

    public List<Reach> all() {
        return all;
    }

    /** What is published of a key on a board; none for most. */
    public List<Reach> of(String key, String boardId) {
        return all.stream()
                .filter(reach ->
                        reach.key().equals(key) && reach.boards().contains(boardId, OptionalInt.empty()) == Truth.TRUE)
                .toList();
    }
}
