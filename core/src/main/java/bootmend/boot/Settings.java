package bootmend.boot;

import bootmend.config.LineKind;
import bootmend.config.ReachedLine;
import bootmend.config.Truth;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.resolve.Candidate;
import bootmend.tuning.resolve.Resolution;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** What the config file says to a board of its boot files: every value that a key may have, not one picked silently. */
final class Settings {

    /** How many values that depend on something are followed. No source: a bound against hostile cards. */
    private static final int MOST = 8;

    private final Resolution resolution;
    private final String mainFile;

    Settings(Resolution resolution, String mainFile) {
        this.resolution = resolution;
        this.mainFile = mainFile;
    }

    /**
     * A value that a key may have.
     *
     * @param value empty for the board's own default
     * @param by the line that gives it; empty for the default
     */
    record Value(Optional<String> value, Optional<Candidate> by) {

        static Value byDefault() {
            return new Value(Optional.empty(), Optional.empty());
        }

        OptionalLong number() {
            return value.map(TuningNumber::parse).orElse(OptionalLong.empty());
        }

        boolean is(long wanted) {
            return number().equals(OptionalLong.of(wanted));
        }
    }

    /** Every value that the key may have, the likeliest first; one where it is sure. */
    List<Value> values(String key) {
        return values(resolution.assignments(key));
    }

    /**
     * The same for a key that is read before includes are followed.
     *
     * <p>Source: what_is_config_txt.adoc, commit 0ff39f51: the early stages do not follow {@code include}.
     */
    List<Value> earlyValues(String key) {
        return values(resolution.assignments(key).stream()
                .filter(each -> each.file().equals(mainFile))
                .toList());
    }

    private static List<Value> values(List<Candidate> inOrder) {
        List<Value> values = new ArrayList<>();
        for (int i = inOrder.size() - 1; i >= 0 && values.size() < MOST; i--) {
            Candidate each = inOrder.get(i);
            Value value = new Value(Optional.of(each.value()), Optional.of(each));
            if (values.stream().noneMatch(other -> other.value().equals(value.value()))) {
                values.add(value);
            }
            if (each.condition().truth() == Truth.TRUE) {
                return values;
            }
        }
        values.add(Value.byDefault());
        return values;
    }

    /** Every line that adds to a key, such as {@code dtoverlay}. */
    List<Candidate> all(String key) {
        return resolution.assignments(key);
    }

    /** Lines that are no setting and begin with this word, split at blanks. */
    List<ReachedLine> words(String first) {
        return resolution.reading().lines().stream()
                .filter(line -> line.line().kind() instanceof LineKind.Other
                        && line.condition().truth() != Truth.FALSE
                        && line.line().text().strip().split("\\s+", 2)[0].equals(first))
                .limit(MOST)
                .toList();
    }

    Resolution resolution() {
        return resolution;
    }
}
