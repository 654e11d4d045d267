package bootmend.tuning;

import bootmend.config.Truth;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Volts from steps and back, where they are published. */
public final class VoltageSteps {

    private static final double MICROVOLTS_A_VOLT = 1_000_000;
    private static final String KEY = "key";

    private final List<VoltageScale> scales;

    private VoltageSteps(List<VoltageScale> scales) {
        this.scales = scales;
    }

    static VoltageSteps read(DataFile file, Vocabulary vocabulary, Sources sources) {
        return new VoltageSteps(file.withColumns(KEY, "boards", "zero_uv", "step_uv", "source")
                .map(
                        row -> scale(row, vocabulary, sources),
                        scale -> List.of(scale.key(), scale.boards().ranges())));
    }

    private static VoltageScale scale(DataRow row, Vocabulary vocabulary, Sources sources) {
        TuningKey key = vocabulary
                .find(row.required(KEY))
                .filter(known -> known.min().isPresent() && known.max().isPresent())
                .orElseThrow(() -> row.error(row.text(KEY) + " is no key with a range"));
        return new VoltageScale(
                key.key(),
                BoardSet.parse(row.words("boards"), row),
                row.number("zero_uv", 1, Integer.MAX_VALUE),
                row.number("step_uv", 1, Integer.MAX_VALUE),
                key.min().getAsLong(),
                key.max().getAsLong(),
                sources.find(row.text("source")).orElseThrow(() -> row.error("unknown source " + row.text("source"))));
    }

    /** How this board turns the key's steps into volts; empty where it is not published. */
    public Optional<VoltageScale> scale(String key, String boardId) {
        return scales.stream()
                .filter(scale ->
                        scale.key().equals(key) && scale.boards().contains(boardId, OptionalInt.empty()) == Truth.TRUE)
                .findFirst();
    }

    /** The voltage at a step, in volts. */
    public Figure volts(String key, String boardId, long step) {
        Optional<VoltageScale> scale = scale(key, boardId);
        if (scale.isEmpty()) {
            return new Figure.NotPublished("volts of " + key + " on " + boardId);
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
