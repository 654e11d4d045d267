package bootmend.gui.view;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Fields with their names above them, side by side as far as there is room. */
final class Form extends FlowPane {

    private final Kit kit;

    Form(Kit kit) {
        super(14, 8);
        this.kit = kit;
        getStyleClass().add("form");
        // Fields wrap at the width they are given, not at one of their own.
        setPrefWrapLength(1);
        setMinWidth(0);
    }

    /** @param key of its name; with dashes it is the field's id */
    TextField text(String key, double width) {
        TextField field = new TextField();
        field.setPrefWidth(width);
        add(key, field);
        return field;
    }

    /** A choice that may be left open. */
    ComboBox<String> choice(String key, double width, List<String> values) {
        ComboBox<String> box = new ComboBox<>();
        box.getItems().setAll(values);
        box.setPrefWidth(width);
        add(key, box);
        return box;
    }

    CheckBox check(String key) {
        CheckBox box = new CheckBox(kit.words().of(key));
        box.setId(id(key));
        box.setMnemonicParsing(true);
        VBox cell = new VBox(box);
        cell.getStyleClass().add("form-check");
        getChildren().add(cell);
        return box;
    }

    private static String id(String key) {
        return key.replace('.', '-');
    }

    private void add(String key, Control field) {
        field.setId(id(key));
        Label name = kit.words(kit.words().of(key), "form-name");
        name.setMnemonicParsing(true);
        name.setLabelFor(field);
        field.setAccessibleText(kit.words().of(key).replace("_", ""));
        String hint = "hint." + key;
        if (kit.words().has(hint)) {
            field.setTooltip(new Tooltip(kit.words().of(hint)));
            field.setAccessibleHelp(kit.words().of(hint));
            if (field instanceof TextField text) {
                text.setPromptText(kit.words().of(hint));
            }
        }
        getChildren().add(new VBox(2, name, field));
    }

    /** Something that takes a row of its own below the fields. */
    static Node row(Node... nodes) {
        FlowPane row = new FlowPane(8, 8, nodes);
        row.setPrefWrapLength(1);
        row.getStyleClass().add("row");
        return row;
    }
}
