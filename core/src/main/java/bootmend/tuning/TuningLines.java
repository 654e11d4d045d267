package bootmend.tuning;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Finds the lines of a config file that have, or were meant to have, a tuning key. */
public final class TuningLines {

    private static final String NONE = "[none]";

    private TuningLines() {}

    /** In the file's order; includes are not followed, and keys that only say how a board starts are left out. */
    public static List<TuningLine> find(ConfigDocument document, Vocabulary vocabulary) {
        return document.lines().stream()
                .flatMap(line -> read(line, vocabulary).stream())
                .filter(line -> line.tuningKey().tunes())
                .toList();
    }

    private static List<TuningLine> read(ConfigLine line, Vocabulary vocabulary) {
        if (line.kind() instanceof LineKind.CommentedSetting commented) {
            return Assignment.of(commented.key(), commented.value()).stream()
                    .flatMap(each ->
                            vocabulary
                                    .find(each.key())
                                    .map(key -> line(line, each, key, TuningLineState.COMMENTED_OUT))
                                    .stream())
                    .toList();
        }
        if (line.kind() instanceof LineKind.Setting setting) {
            List<TuningLine> lines = Assignment.of(setting).stream()
                    .flatMap(each ->
                            vocabulary.findOnCard(each.key()).map(key -> line(line, each, key, active(line))).stream())
                    .toList();
            return lines.isEmpty() ? misspelt(line, setting, vocabulary) : lines;
        }
        return List.of();
    }

    /** Lines that a board does not take for what they were meant as. */
    private static List<TuningLine> misspelt(ConfigLine line, LineKind.Setting setting, Vocabulary vocabulary) {
        String meant = setting.trimmedKey().toLowerCase(Locale.ROOT);
        return Stream.concat(
                        Stream.of(new Assignment(setting.trimmedKey(), setting.value())),
                        Assignment.of(meant, setting.value()).stream())
                .flatMap(each -> vocabulary
                        .findIgnoringCase(each.key())
                        .map(key ->
                                line(line, new Assignment(setting.key(), setting.value()), key, state(setting, key)))
                        .stream())
                .limit(1)
                .toList();
    }

    private static TuningLine line(ConfigLine line, Assignment written, TuningKey key, TuningLineState state) {
        return new TuningLine(line.number(), line.section(), written.key(), written.value(), key, state);
    }

    private static TuningLineState state(LineKind.Setting setting, TuningKey key) {
        String meant =
                key.key().contains("=") ? key.key().substring(0, key.key().indexOf('=')) : key.key();
        if (!setting.trimmedKey().equals(meant)) {
            return TuningLineState.WRONG_CASE;
        }
        return setting.key().equals(meant) ? TuningLineState.WRONG_CASE : TuningLineState.BLANK_IN_KEY;
    }

    private static TuningLineState active(ConfigLine line) {
        // A section after [none] may or may not lift it (no source); such lines count here, so a reset catches them.
        return line.section().filter(NONE::equals).isPresent() ? TuningLineState.NEVER_APPLIES : TuningLineState.ACTIVE;
    }
}
