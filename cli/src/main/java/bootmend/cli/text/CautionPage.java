package bootmend.cli.text;

import bootmend.view.CautionView;
import java.util.List;

/** Prints cautions. */
final class CautionPage {

    private static final int NAME_WIDTH = 12;

    private final Screen screen;

    CautionPage(Screen screen) {
        this.screen = screen;
    }

    void print(List<CautionView> cautions) {
        if (!cautions.isEmpty()) {
            screen.blank();
            screen.line("bold", "Cautions");
            cautions.forEach(caution -> screen.paragraph("  " + caution.id(), NAME_WIDTH, caution.text()));
        }
    }
}
