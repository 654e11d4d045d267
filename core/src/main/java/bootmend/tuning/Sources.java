package bootmend.tuning;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The published sources that bootmend's numbers come from. */
public final class Sources {

    /** What stands in for a published source where there is none. */
    private static final Map<String, String> UNPUBLISHED =
            Map.of("memory", "value from memory", "practice", "common practice, no source", "none", "no source found");

    private final List<Source> all;

    private Sources(List<Source> all) {
        this.all = all;
    }

    static Sources read(DataFile file) {
        return new Sources(file.withColumns("id", "title", "place", "edition", "note")
                .map(
                        row -> new Source(
                                row.required("id"),
                                row.required("title"),
                                row.text("place"),
                                row.text("edition"),
                                row.text("note")),
                        Source::id));
    }

    public List<Source> all() {
        return all;
    }

    public Optional<Source> find(String id) {
        return all.stream().filter(source -> source.id().equals(id)).findFirst();
    }

    /** The sources that a cell names by their ids, or the words for what has none, in one phrase. */
    public String citation(DataRow row, String column) {
        row.required(column);
        return row.words(column).stream()
                .map(word -> find(word)
                        .map(Source::citation)
                        .or(() -> Optional.ofNullable(UNPUBLISHED.get(word)))
                        .orElseThrow(() -> row.error("unknown source " + word)))
                .collect(Collectors.joining("; "));
    }
}
