package bootmend.tuning.resolve;

import bootmend.config.ConfigReading;
import bootmend.config.LineKind;
import bootmend.config.ReachedLine;
import bootmend.tuning.Assignment;
import bootmend.tuning.Vocabulary;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Tells for each tuning line which part it has in the effective values. */
final class LineOutcomes {

    private final Map<ReachedLine, LineEffect> effects = new HashMap<>();

    private LineOutcomes(List<Effective> effective) {
        for (Effective each : effective) {
            LineEffect chosen =
                    switch (each.state()) {
                        case SET -> LineEffect.IN_FORCE;
                        case DEPENDS -> LineEffect.DEPENDS;
                        case IGNORED -> LineEffect.IGNORED;
                    };
            LineEffect shadowed = chosen == LineEffect.IGNORED ? chosen : LineEffect.OVERRIDDEN;
            note(each.chosen(), chosen);
            each.otherwise().forEach(candidate -> note(candidate, LineEffect.DEPENDS));
            each.shadowed().forEach(candidate -> note(candidate, shadowed));
        }
    }

    static List<LineOutcome> of(ConfigReading reading, Vocabulary vocabulary, List<Effective> effective) {
        LineOutcomes outcomes = new LineOutcomes(effective);
        return reading.lines().stream()
                .flatMap(line -> outcomes.outcomes(line, vocabulary).stream())
                .toList();
    }

    /** A line that sets several keys has the strongest of its parts; the constants stand in that order. */
    private void note(Candidate candidate, LineEffect effect) {
        effects.merge(candidate.source(), effect, (left, right) -> left.compareTo(right) <= 0 ? left : right);
    }

    private List<LineOutcome> outcomes(ReachedLine line, Vocabulary vocabulary) {
        if (!(line.line().kind() instanceof LineKind.Setting setting)) {
            return List.of();
        }
        return Assignment.of(setting).stream()
                .flatMap(
                        each -> vocabulary
                                .findOnCard(each.key())
                                .map(key -> new LineOutcome(line, key, each.value(), effect(line)))
                                .stream())
                .toList();
    }

    private LineEffect effect(ReachedLine line) {
        return switch (line.condition().truth()) {
            case TRUE -> effects.getOrDefault(line, LineEffect.OVERRIDDEN);
            // Not chosen although it may count: the key comes to the same value in any case.
            case UNKNOWN -> effects.getOrDefault(line, LineEffect.DEPENDS);
            case FALSE -> line.none() ? LineEffect.NEVER_APPLIES : LineEffect.OTHER_BOARD;
        };
    }
}
