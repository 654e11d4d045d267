package bootmend.cli;

/** Each card's page on the screen, with a blank line between two. */
final class CheckPages implements CheckFile {

    private final Screen screen;
    private boolean begun;

    CheckPages(Screen screen) {
        this.screen = screen;
    }

    @Override
    public void add(CheckedCard card) {
        if (begun) {
            screen.blank();
        }
        begun = true;
        card.view().ifPresent(new CheckPage(screen)::print);
    }

    @Override
    public void close() {
        // The screen stays.
    }
}
