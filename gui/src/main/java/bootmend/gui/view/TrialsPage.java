package bootmend.gui.view;

import bootmend.gui.model.DeskModel;
import javafx.scene.layout.VBox;

/** What each board took, as a chart, and what to try next. */
final class TrialsPage extends VBox {

    TrialsPage(DeskModel desk, Kit kit, Dialogs dialogs) {
        setId("trials-page");
        getStyleClass().add("page");
    }

    void read() {
    }
}
