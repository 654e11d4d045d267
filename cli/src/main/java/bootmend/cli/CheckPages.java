package bootmend.cli;

/** Each card's page on the screen, with a blank line between two, and after the last of several. */
final class CheckPages implements CheckFile {

    private final Screen screen;
    private int pages;

    CheckPages(Screen screen) {
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
