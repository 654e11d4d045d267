package bootmend.operation;

import bootmend.change.Plan;
import bootmend.change.UndoRecord;
import bootmend.finding.Finding;
import bootmend.view.CardView;
import java.util.List;
import java.util.Optional;

/**
 * What a request comes to on an open card.
 *
 * @param before the card as it is
 * @param files what becomes of its files, exactly
 * @param findings what is wrong with the card, each with whether the change repairs it
 * @param brings what a check finds in the new config files and does not find now, the heaviest first
 * @param questions what a user should say yes to before the change itself, each on its own
 * @param notes sentences on what the change leaves as it is and a user may want to know
 * @param notRepaired why boards do not start from the card, where a repair does not put that right
 * @param undoes the record of the change that this one undoes
 */
record Worked(
        CardView before,
        List<FileEdit> files,
        List<Finding> findings,
        List<Finding> brings,
        List<String> questions,
        List<String> notes,
        List<NotRepaired> notRepaired,
        Plan plan,
        Optional<UndoRecord> undoes) {

    static Worked of(CardView before, Plan plan) {
        return new Worked(
                before,
                FileEdit.of(plan.files()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                plan,
                Optional.empty());
    }

    Worked shown(List<FileEdit> edits) {
        return new Worked(before, edits, findings, brings, questions, notes, notRepaired, plan, undoes);
    }

    Worked finding(List<Finding> found) {
        return new Worked(before, files, found, brings, questions, notes, notRepaired, plan, undoes);
    }

    Worked bringing(List<Finding> found) {
        return new Worked(before, files, findings, found, questions, notes, notRepaired, plan, undoes);
    }

    Worked asking(List<String> more) {
        return new Worked(before, files, findings, brings, more, notes, notRepaired, plan, undoes);
    }

    Worked noting(List<String> more) {
        return new Worked(before, files, findings, brings, questions, more, notRepaired, plan, undoes);
    }

    Worked leaving(List<NotRepaired> causes) {
        return new Worked(before, files, findings, brings, questions, notes, causes, plan, undoes);
    }

    Worked undoing(UndoRecord record) {
        return new Worked(before, files, findings, brings, questions, notes, notRepaired, plan, Optional.of(record));
    }
}
