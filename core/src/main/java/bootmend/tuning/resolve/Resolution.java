package bootmend.tuning.resolve;

import bootmend.config.ConfigReading;
import bootmend.config.LineKind;
import bootmend.config.ReachedLine;
import bootmend.config.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a config file comes to on one board.
 *
 * @param facts what was known about the board
 * @param reading every line the board comes to, and includes that could not be followed
 * @param effective every tuning key that some line gives a value, keys that set several already expanded
 * @param lines every line with a tuning key, in reading order
 */
public record Resolution(BoardFacts facts, ConfigReading reading, List<Effective> effective, List<LineOutcome> lines) {

    public Resolution {
        effective = List.copyOf(effective);
        lines = List.copyOf(lines);
    }

    /** A tuning key's effective value; empty where no line that may count gives it one. */
    public Optional<Effective> tuning(String key) {
        return effective.stream().filter(each -> each.key().equals(key)).findFirst();
    }

    /** Every line that gives this key, tuning key or not, a value on this board, or may; in reading order. */
    public List<Candidate> assignments(String key) {
        List<Candidate> candidates = new ArrayList<>();
        for (ReachedLine line : reading.lines()) {
            if (line.line().kind() instanceof LineKind.Setting setting
                    && setting.key().equals(key)
                    && line.condition().truth() != Truth.FALSE) {
                candidates.add(new Candidate(key, setting.value(), setting.value(), line.condition(), line));
            }
        }
        return List.copyOf(candidates);
    }

    /**
     * The effective value of a key that is no tuning key and of which the last line wins, such as {@code kernel}; not
     * for keys that add up, such as {@code dtoverlay}.
     */
    public Optional<Effective> setting(String key) {
        List<Candidate> candidates = assignments(key);
        return candidates.isEmpty() ? Optional.empty() : Optional.of(Choice.among(key, candidates));
    }
}
