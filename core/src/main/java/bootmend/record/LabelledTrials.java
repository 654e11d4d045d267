package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.trial.Trial;
import bootmend.trial.Unit;
import java.util.List;
import java.util.Optional;

/**
 * The trials of one physical board.
 *
 * @param unit the board
 * @param trials oldest first, at least one
 */
record LabelledTrials(Unit unit, List<Trial> trials) {

    /** @throws CardException if there is none, or if they do not agree on which board it is */
    static LabelledTrials of(List<Trial> all, String label) throws CardException {
        List<Trial> trials = all.stream()
                .filter(trial -> trial.unit().label().equals(label.strip()))
                .toList();
        if (trials.isEmpty()) {
            throw none(all, label);
        }
        Unit unit = trials.get(0).unit();
        for (Trial trial : trials) {
            if (!trial.unit().equals(unit)) {
                throw CardException.unreadable(
                        label + " is a " + unit.board() + " in trial "
                                + trials.get(0).id() + " but a " + trial.unit().board() + " in trial " + trial.id(),
                        "A label is for one physical board; correct the one that is wrong.");
            }
        }
        return new LabelledTrials(unit, trials);
    }

    /** Those under one cooling, in any case; all where none is named. */
    LabelledTrials under(Optional<String> cooling) throws CardException {
        if (cooling.isEmpty()) {
            return this;
        }
        List<Trial> some = trials.stream()
                .filter(trial -> trial.surroundings()
                        .cooling()
                        .equalsIgnoreCase(cooling.get().strip()))
                .toList();
        if (some.isEmpty()) {
            throw CardException.usage(
                    unit.label() + " had no trial under the cooling \"" + cooling.get() + "\"",
                    "Known here: "
                            + String.join(
                                    ", ",
                                    trials.stream()
                                            .map(trial ->
                                                    "\"" + trial.surroundings().cooling() + "\"")
                                            .distinct()
                                            .sorted()
                                            .toList())
                            + ".");
        }
        return new LabelledTrials(unit, some);
    }

    private static CardException none(List<Trial> all, String label) {
        List<String> labels = all.stream()
                .map(trial -> trial.unit().label())
                .distinct()
                .sorted()
                .toList();
        String what = "there is no trial of a board labelled " + label;
        return labels.isEmpty()
                ? CardException.usage(what, "No trial is kept here yet.", NextStep.Plain.ADD_TRIAL)
                : CardException.usage(
                        what,
                        "A board goes by the label its trials were given. Known here: " + String.join(", ", labels)
                                + ".");
    }
}
