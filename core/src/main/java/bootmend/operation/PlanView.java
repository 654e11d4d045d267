package bootmend.operation;

import bootmend.change.FileChange;
import bootmend.change.Plan;
import bootmend.change.PlanStep;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A plan as a user is shown it.
 *
 * @param sectorsWritten sector writes, a sector that two steps write counted twice
 * @param sectorsByKind the same by what the sectors are for
 * @param steps in the order they are written
 * @param inPlace whether a cut in the middle could leave a file that only the undo record can repair
 * @param files paths of the files that change
 * @param ofFolder whether it is for a mounted folder, and so names no sectors
 * @param beside files that a mounted folder has only while it is changed, under names that are free there
 */
public record PlanView(
        String title,
        int sectorsWritten,
        Map<String, Integer> sectorsByKind,
        List<Step> steps,
        boolean inPlace,
        List<String> files,
        boolean ofFolder,
        List<String> beside) {

    /**
     * One step.
     *
     * @param words what it is for
     * @param sectors sector writes in it
     */
    public record Step(String words, int sectors) {}

    static PlanView of(Plan plan) {
        Map<String, Integer> kinds = new LinkedHashMap<>();
        plan.sectorsByKind().forEach((kind, count) -> kinds.put(kind.words(), count));
        List<Step> steps = plan.steps().stream().map(PlanView::step).toList();
        return new PlanView(
                plan.title(),
                plan.sectorsWritten(),
                kinds,
                steps,
                plan.isInPlace(),
                plan.files().stream().map(FileChange::path).toList(),
                plan.isOfFolder(),
                List.copyOf(plan.beside().values()));
    }

    private static Step step(PlanStep step) {
        return new Step(step.kind().words(), step.changes().size());
    }
}
