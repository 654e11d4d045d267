package bootmend.gui.view;

import bootmend.gui.model.DeskModel;
import javafx.scene.layout.VBox;

/** Known-good profiles and others, to pick from. */
final class ProfilesPage extends VBox {

    ProfilesPage(DeskModel desk, Kit kit, Dialogs dialogs) {
        setId("profiles-page");
        getStyleClass().add("page");
    }
}
