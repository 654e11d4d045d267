package bootmend.gui.view;

import bootmend.view.CautionView;
import java.util.List;
import javafx.geometry.Insets;
import javafx.scene.control.TitledPane;
import javafx.scene.layout.VBox;

/** The cautions for heat, voltage and warranty, folded until someone looks. */
final class CautionsPane extends TitledPane {

    CautionsPane(Kit kit, List<CautionView> cautions) {
        super(kit.words().of("sheet.cautions", cautions.size()), new VBox(6));
        VBox texts = (VBox) getContent();
        texts.setPadding(new Insets(4));
        cautions.forEach(caution -> texts.getChildren().add(kit.prose(caution.text())));
        setExpanded(false);
        setAnimated(false);
    }
}
