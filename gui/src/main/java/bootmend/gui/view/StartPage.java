package bootmend.gui.view;

import javafx.geometry.Pos;
import javafx.scene.layout.VBox;

/** What stands in the middle while no card is looked at. */
final class StartPage extends VBox {

    StartPage(Kit kit) {
        super(12);
        setId("start-page");
        setAlignment(Pos.CENTER);
        getStyleClass().addAll("page", "start-page");
        getChildren()
                .addAll(kit.label("start.title", "title"), kit.label("start.how"), kit.label("start.never", "muted"));
    }
}
