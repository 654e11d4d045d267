package bootmend.gui.view;

import bootmend.gui.model.CardModel;
import javafx.scene.layout.VBox;

/** What is damaged on the card, and what a repair would do. */
final class DamagePage extends VBox {

    DamagePage(CardModel model, Kit kit) {
        setId("damage-page");
        getStyleClass().add("page");
    }
}
