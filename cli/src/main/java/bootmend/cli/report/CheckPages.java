package bootmend.cli.report;

import bootmend.cli.outcome.CheckedCard;
import bootmend.cli.text.CheckPage;
import bootmend.cli.text.Screen;

/** Each card's page on the screen, with a blank line between two, and after the last of several. */
public final class CheckPages implements CheckFile {

    private final Screen screen;
    private int pages;

    public CheckPages(Screen screen) {
        this.screen = screen;
    }

    @Override
    public void add(CheckedCard card) {
        if (pages++ > 0) {
            screen.blank();
        }
        card.view().ifPresent(new CheckPage(screen)::print);
    }

    @Override
    public void close() {
        if (pages > 1) {
            screen.blank();
        }
    }
}
