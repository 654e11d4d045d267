package bootmend.tuning;

import java.util.List;
import java.util.Set;

/** The warnings that bootmend gives, in the order they are given. */
public final class Cautions {

    private final List<Caution> all;

    private Cautions(List<Caution> all) {
        this.all = all;
    }

    static Cautions read(DataFile file, Sources sources) {
        return new Cautions(file.withColumns("id", "causes", "topics", "text", "source")
                .map(row -> caution(row, sources), Caution::id));
    }

    private static Caution caution(DataRow row, Sources sources) {
        return new Caution(
                row.required("id"),
                Set.copyOf(row.words("causes")),
                row.words("topics"),
                row.required("text"),
                sources.citation(row, "source"));
    }

    public List<Caution> all() {
        return all;
    }

    /** Those that any of these causes calls for. */
    public List<Caution> calledForBy(Set<String> causes) {
        return all.stream()
                .filter(caution -> caution.causes().stream().anyMatch(causes::contains))
                .toList();
    }

    /** Those that belong to a tuning group, to {@code throttle} or to {@code board}. */
    public List<Caution> about(String topic) {
        return all.stream().filter(caution -> caution.topics().contains(topic)).toList();
    }
}
