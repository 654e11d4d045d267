package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.trial.Trial;
import bootmend.trial.Unit;
import java.util.List;

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
