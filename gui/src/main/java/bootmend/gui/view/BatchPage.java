package bootmend.gui.view;

import bootmend.gui.model.BatchModel;
import javafx.scene.layout.VBox;

/** Several cards, worked on together. */
final class BatchPage extends VBox {

    BatchPage(BatchModel model, Kit kit, Dialogs dialogs) {
        setId("batch-page");
        getStyleClass().add("page");
    }
}
