package bootmend.gui.view;

import bootmend.gui.model.CardModel;
import javafx.scene.layout.VBox;

/** Whether the card is ready for a purpose, and its packing slip. */
final class CheckPage extends VBox {

    CheckPage(CardModel model, Kit kit, Dialogs dialogs) {
        setId("check-page");
        getStyleClass().add("page");
    }
}
