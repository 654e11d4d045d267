package bootmend.tuning;

import bootmend.config.Truth;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Volts from steps and back, where they are published. */
public final class VoltageSteps {

    private static final double MICROVOLTS_A_VOLT = 1_000_000;
    private static final String KEY = "key";

    private final List<Row> rows;

    private VoltageSteps(List<Row> rows) {
        this.rows = rows;
    }

    static VoltageSteps read(DataFile file, Vocabulary vocabulary, Sources sources) {
        return new VoltageSteps(file.withColumns(KEY, "boards", "zero_uv", "step_uv", "unclear", "source")
                .map(
                        row -> scale(row, vocabulary, sources),
                        row -> List.of(row.key(), row.boards().ranges())));
    }

    private static Row scale(DataRow row, Vocabulary vocabulary, Sources sources) {
        TuningKey key = vocabulary
                .find(row.required(KEY))
                .filter(known -> known.min().isPresent() && known.max().isPresent())
                .orElseThrow(() -> row.error(row.text(KEY) + " is no key with a range"));
        BoardSet boards = BoardSet.parse(row.words("boards"), row);
        String citation = sources.citation(row, "source");
        if (!row.text("unclear").isEmpty()) {
            if (!row.text("zero_uv").isEmpty() || !row.text("step_uv").isEmpty()) {
                throw row.error("what is unclear has no volts");
            }
            return new Row(key.key(), boards, Optional.empty(), row.text("unclear"), citation);
        }
        VoltageScale scale = new VoltageScale(
                key.key(),
                boards,
                row.number("zero_uv", 1, Integer.MAX_VALUE),
                row.number("step_uv", 1, Integer.MAX_VALUE),
                key.min().getAsLong(),
                key.max().getAsLong(),
                citation);
        return new Row(key.key(), boards, Optional.of(scale), "", citation);
    }

    /** A row of the table: a scale, or why there is none. */
    private record Row(String key, BoardSet boards, Optional<VoltageScale> scale, String unclear, String citation) {}

    private Optional<Row> row(String key, String boardId) {
        return rows.stream()
                .filter(row ->
                        row.key().equals(key) && row.boards().contains(boardId, OptionalInt.empty()) == Truth.TRUE)
                .findFirst();
    }

    /** Why a key's steps cannot be told in volts on a board, and where that is published; empty where nothing is. */
    public Optional<String> unclear(String key, String boardId) {
        return row(key, boardId)
                .filter(row -> !row.unclear().isEmpty())
                .map(row -> row.unclear() + " (" + row.citation() + ")");
    }

    /** How this board turns the key's steps into volts; empty where it is not published. */
    public Optional<VoltageScale> scale(String key, String boardId) {
        return row(key, boardId).flatMap(Row::scale);
    }

    /** The voltage at a step, in volts. */
    public Figure volts(String key, String boardId, long step) {
        Optional<VoltageScale> scale = scale(key, boardId);
        if (scale.isEmpty()) {
            String why =
                    row(key, boardId).map(row -> " (" + row.unclear() + ")").orElse("");
            return new Figure.NotPublished("volts of " + key + " on " + boardId + why);
        }
        if (scale.get().microvolts(step).isEmpty()) {
            return new Figure.NotPublished("volts of " + key + "=" + step + ", which is out of range");
        }
        return volts(scale.get().microvolts(step).getAsLong());
    }

    /** Microvolts, such as the value of {@code over_voltage_delta}, in volts. */
    public static Figure volts(long microvolts) {
        return new Figure.Value(microvolts / MICROVOLTS_A_VOLT);
    }
}
