package bootmend.tuning;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import java.util.List;
import java.util.Optional;

/** Finds the lines of a config file that have, or were meant to have, a tuning key. */
public final class TuningLines {

    private static final String NONE = "[none]";

    private TuningLines() {}

    /** In the file's order; includes are not followed. */
    public static List<TuningLine> find(ConfigDocument document, Vocabulary vocabulary) {
        return document.lines().stream()
                .flatMap(line -> read(line, vocabulary).stream())
                .toList();
    }

    private static Optional<TuningLine> read(ConfigLine line, Vocabulary vocabulary) {
        if (line.kind() instanceof LineKind.CommentedSetting commented) {
            return vocabulary
                    .find(commented.key())
                    .map(key -> new TuningLine(
                            line.number(),
                            line.section(),
                            commented.key(),
                            commented.value(),
                            key,
                            TuningLineState.COMMENTED_OUT));
        }
        if (line.kind() instanceof LineKind.Setting setting) {
            return vocabulary
                    .findIgnoringCase(setting.trimmedKey())
                    .map(key -> new TuningLine(
                            line.number(),
                            line.section(),
                            setting.key(),
                            setting.value(),
                            key,
                            state(line, setting, key)));
        }
        return Optional.empty();
    }

    private static TuningLineState state(ConfigLine line, LineKind.Setting setting, TuningKey key) {
        if (!setting.trimmedKey().equals(key.key())) {
            return TuningLineState.WRONG_CASE;
        } else if (!setting.key().equals(key.key())) {
            return TuningLineState.BLANK_IN_KEY;
        }
        // A section after [none] may or may not lift it (no source); such lines count here, so a reset catches them.
        return line.section().filter(NONE::equals).isPresent() ? TuningLineState.NEVER_APPLIES : TuningLineState.ACTIVE;
    }
}
