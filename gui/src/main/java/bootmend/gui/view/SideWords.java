package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.record.TrialSide;
import javafx.util.StringConverter;

/** What is compared, as a choice says it; nothing is a choice too. */
final class SideWords extends StringConverter<TrialSide> {

    private final String none;

    SideWords(String none) {
        this.none = none;
    }

    @Override
    public String toString(TrialSide side) {
        return side == null ? none : VisibleText.of(side.words());
    }

    @Override
    public TrialSide fromString(String text) {
        throw new UnsupportedOperationException("a side is chosen, never typed");
    }
}
