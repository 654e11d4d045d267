package bootmend.tuning;

import bootmend.config.Truth;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** How each board's core voltage is set. */
public final class VoltageControls {

    private static final String NONE = "none";

    private final List<VoltageControl> all;

    private VoltageControls(List<VoltageControl> all) {
        this.all = all;
    }

    static VoltageControls read(DataFile file, Vocabulary vocabulary, Sources sources) {
        return new VoltageControls(file.withColumns("boards", "left", "first", "why", "low", "high", "top", "source")
                .map(row -> control(row, vocabulary, sources), Function.identity()));
    }

    private static VoltageControl control(DataRow row, Vocabulary vocabulary, Sources sources) {
        return new VoltageControl(
                BoardSet.parse(row.words("boards"), row),
                row.text("left").equals(NONE) ? Optional.empty() : Optional.of(key(row, "left", vocabulary)),
                key(row, "first", vocabulary),
                row.required("why"),
                row.optionalNumber("low"),
                row.optionalNumber("high"),
                row.optionalNumber("top"),
                sources.citation(row, "source"));
    }

    private static String key(DataRow row, String column, Vocabulary vocabulary) {
        String key = row.required(column);
        return vocabulary
                .find(key)
                .map(TuningKey::key)
                .orElseThrow(() -> row.error("column " + column + ": " + key + " is no key"));
    }

    /** How this board's is; empty where nothing is published. */
    public Optional<VoltageControl> of(String boardId) {
        return all.stream()
                .filter(control -> control.boards().contains(boardId, OptionalInt.empty()) == Truth.TRUE)
                .findFirst();
    }
}
