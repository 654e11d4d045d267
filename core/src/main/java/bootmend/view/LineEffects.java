package bootmend.view;

import bootmend.config.ReachedLine;
import bootmend.config.Truth;
import bootmend.tuning.resolve.Candidate;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import bootmend.tuning.resolve.LineEffect;
import bootmend.tuning.resolve.LineOutcome;
import bootmend.tuning.resolve.Resolution;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Says in words what becomes of each line on a board. */
final class LineEffects {

    /** How many things that a line depends on are told beside it. */
    private static final int MOST_REASONS = 3;

    private static final LineEffectView NOT_READ = new LineEffectView(
            LineEffect.OTHER_BOARD.word(), "not for this board: no include line that counts there names its file");

    private final Map<Place, LineOutcome> outcomes = new HashMap<>();
    private final Map<ReachedLine, Effective> chosenBy = new HashMap<>();
    private final Map<ReachedLine, Effective> shadowedBy = new HashMap<>();
    private final UnaryOperator<String> paths;

    /** Where a line stands. */
    private record Place(String path, int line) {}

    /** @param paths gives the path of a file that an include line names */
    LineEffects(Resolution resolution, UnaryOperator<String> paths) {
        this.paths = paths;
        for (LineOutcome outcome : resolution.lines()) {
            Place place = new Place(
                    paths.apply(outcome.source().file()),
                    outcome.source().line().number());
            outcomes.merge(place, outcome, LineEffects::stronger);
        }
        for (Effective effective : resolution.effective()) {
            chosenBy.putIfAbsent(effective.chosen().source(), effective);
            effective.otherwise().forEach(candidate -> chosenBy.putIfAbsent(candidate.source(), effective));
            effective.shadowed().forEach(candidate -> shadowedBy.putIfAbsent(candidate.source(), effective));
        }
    }

    /** A file that is included twice has each of its lines read twice. */
    private static LineOutcome stronger(LineOutcome left, LineOutcome right) {
        return left.effect().compareTo(right.effect()) <= 0 ? left : right;
    }

    /** Empty for a line that no board reads as a tuning line, such as one that is commented out. */
    Optional<LineEffectView> of(TuningView line) {
        LineOutcome outcome = outcomes.get(new Place(line.file(), line.line()));
        if (outcome == null) {
            return line.active() ? Optional.of(NOT_READ) : Optional.empty();
        }
        return Optional.of(new LineEffectView(outcome.effect().word(), words(outcome)));
    }

    private String words(LineOutcome outcome) {
        String word = outcome.effect().word();
        ReachedLine source = outcome.source();
        return switch (outcome.effect()) {
            case IN_FORCE ->
                word
                        + Optional.ofNullable(chosenBy.get(source))
                                .map(Effective::chosen)
                                .filter(chosen ->
                                        chosen.setBy().equals(outcome.key().key()))
                                .filter(chosen -> outcome.key().clamped()
                                        && !chosen.value().equals(chosen.written()))
                                .map(chosen -> ", taken as " + chosen.value())
                                .orElse("");
            case DEPENDS -> word + " on " + reasons(dependsOn(source));
            case OVERRIDDEN -> word + shadow(source);
            case IGNORED ->
                word
                        + Optional.ofNullable(chosenBy.getOrDefault(source, shadowedBy.get(source)))
                                .map(effective -> ": " + effective.reason())
                                .orElse("");
            case OTHER_BOARD, NEVER_APPLIES -> word;
        };
    }

    private static String reasons(List<String> all) {
        String some = all.stream().limit(MOST_REASONS).collect(Collectors.joining(" and "));
        return all.size() > MOST_REASONS ? some + " and more" : some;
    }

    private List<String> dependsOn(ReachedLine source) {
        if (source.condition().truth() == Truth.UNKNOWN) {
            return source.condition().dependsOn();
        }
        return Optional.ofNullable(chosenBy.get(source))
                .map(Effective::dependsOn)
                .orElse(List.of("the board"));
    }

    private String shadow(ReachedLine source) {
        Effective effective = shadowedBy.get(source);
        if (effective == null) {
            return "";
        }
        Candidate winner = effective.state() == EffectiveState.DEPENDS
                ? effective.otherwise().get(effective.otherwise().size() - 1)
                : effective.chosen();
        String file = paths.apply(winner.file());
        return " by line " + winner.line() + (file.equals(paths.apply(source.file())) ? "" : " of " + file);
    }
}
