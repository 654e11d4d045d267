package bootmend.gui.view;

import bootmend.gui.model.CardModel;
import javafx.scene.layout.VBox;

/** The changes made to the card from this computer, to go back to any. */
final class ChangesPage extends VBox {

    ChangesPage(CardModel model, Kit kit) {
        setId("changes-page");
        getStyleClass().add("page");
    }
}
