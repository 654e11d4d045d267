package bootmend.operation;

import bootmend.CardException;
import bootmend.card.OpenCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.view.CardViews;
import java.io.IOException;

/** Takes staged settings away. */
record UnstageWork(Work work) implements WorkOut {

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        FilePlanner planner = work.planner(card);
        planner.put(new FileChange(StagedFile.NAME, StagedFile.needed(card).bytes(), null));
        return Worked.of(new CardViews(work.workplace()).of(card), planner.plan("remove the staged settings"));
    }
}
