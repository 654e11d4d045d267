package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import java.io.IOException;
import java.time.LocalDateTime;

/**
 * Works out how to undo a finished change: sector by sector where the card is still as the change left it, else file by
 * file where only the files are.
 */
public final class UndoPlanner {

    private final Target target;

    public UndoPlanner(Target target) {
        this.target = target;
    }

    /**
     * The plan that undoes {@code record}.
     *
     * @param now the time that changed files get, local
     * @param inPlaceAllowed whether a file may be overwritten where it stands
     */
    public Plan plan(UndoRecord record, LocalDateTime now, boolean inPlaceAllowed) throws CardException, IOException {
        Plan back = record.plan().reversed("undo: " + record.plan().title());
        boolean exact = target.holds(back);
        if (exact && (inPlaceAllowed || !back.isInPlace())) {
            return back;
        }
        if (back.files().isEmpty()) {
            throw CardException.refused(
                    "the card was changed since in a sector that \""
                            + record.plan().title() + "\" wrote, so that cannot be undone",
                    "",
                    NextStep.Plain.REPAIR_CARD);
        }
        try {
            return byFiles(back, now, inPlaceAllowed);
        } catch (CardException e) {
            throw exact ? onlyInPlace() : e;
        }
    }

    private static CardException onlyInPlace() {
        return CardException.refused(
                "the change was made in place, and there is no room to undo it in any other way; a cut in the middle would "
                        + "leave the file half old, half new until it is recovered on this computer",
                "Delete a file that the board does not need from the boot partition.",
                NextStep.Allow.IN_PLACE);
    }

    private Plan byFiles(Plan back, LocalDateTime now, boolean inPlaceAllowed) throws CardException, IOException {
        FilePlanner planner = target.planner(now, inPlaceAllowed);
        for (FileChange change : back.files()) {
            planner.put(change);
        }
        return planner.plan(back.title());
    }
}
