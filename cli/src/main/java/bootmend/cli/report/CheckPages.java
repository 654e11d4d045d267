package bootmend.cli.report;

import bootmend.batch.CardResult;
import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.text.CheckPage;
import bootmend.cli.text.Screen;
import bootmend.view.CheckView;

/** Each card's page on the screen, with a blank line between two, and after the last of several. */
public final class CheckPages implements Report<CardResult<CheckView>> {

    private final Screen screen;
    private int pages;

    public CheckPages(Screen screen) {
        this.screen = screen;
    }

    @Override
    public void add(CardResult<CheckView> card) {
        if (pages++ > 0) {
            screen.blank();
        }
        card.view().ifPresent(new CheckPage(screen)::print);
    }

    @Override
    public void end(BatchTotals totals) {
        if (pages > 1) {
            screen.blank();
        }
    }
}
