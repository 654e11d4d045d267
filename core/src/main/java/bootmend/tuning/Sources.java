package bootmend.tuning;

import java.util.List;
import java.util.Optional;

/** The published sources that bootmend's numbers come from. */
public final class Sources {

    private final List<Source> all;

    private Sources(List<Source> all) {
        this.all = all;
    }

    static Sources read(DataFile file) {
        return new Sources(file.withColumns("id", "title", "place", "edition", "note")
                .map(row -> new Source(row.required("id"), row.required("title"), row.text("place"),
                        row.text("edition"), row.text("note")), Source::id));
    }

    public List<Source> all() {
        return all;
    }

    public Optional<Source> find(String id) {
        return all.stream().filter(source -> source.id().equals(id)).findFirst();
    }
}
