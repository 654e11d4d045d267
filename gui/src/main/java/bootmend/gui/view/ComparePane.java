package bootmend.gui.view;

import bootmend.gui.model.EarlierModel;
import bootmend.gui.model.EarlierWords;
import bootmend.view.EarlierVersionView;
import bootmend.view.EarlierView;
import bootmend.view.TextComparison;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** The text of an earlier version beside the present file or another version, and the way back to it. */
final class ComparePane extends VBox {

    private final EarlierModel model;
    private final Kit kit;
    private final EarlierWords words;
    private final VBox head = new VBox(4);
    private final ComboBox<Optional<String>> other = new ComboBox<>();
    private final ListView<TextComparison.Row> rows = new ListView<>();
    private final Label rest;
    private final Button tuning;
    private final Button whole;
    private boolean filling;

    ComparePane(EarlierModel model, Kit kit, EarlierWords words) {
        this.model = model;
        this.kit = kit;
        this.words = words;
        setSpacing(8);
        setMinWidth(0);
        tuning = kit.button("earlier.tuning", () -> model.putBack(false));
        whole = kit.button("earlier.whole", () -> model.putBack(true));
        rest = kit.text("", "muted");
        other.setId("earlier-against");
        other.setAccessibleText(kit.words().of("earlier.against").replace("_", ""));
        other.setConverter(new Names());
        other.setMaxWidth(Double.MAX_VALUE);
        other.setOnAction(event -> {
            if (!filling && other.getValue() != null) {
                model.compareWith(other.getValue());
            }
        });
        Label name = kit.words(kit.words().of("earlier.against"));
        name.setMnemonicParsing(true);
        name.setLabelFor(other);
        rows.setId("earlier-rows");
        rows.getStyleClass().add("sheet");
        rows.setAccessibleText(kit.words().of("earlier.rows"));
        rows.setCellFactory(list -> new RowCell());
        VBox.setVgrow(rows, Priority.ALWAYS);
        FlowPane choice = new FlowPane(8, 6, name, other);
        choice.getStyleClass().add("row");
        getChildren().addAll(head, new FlowPane(8, 8, tuning, whole), choice, rows, rest);
        model.found().watch(reading -> show());
        model.chosen().watch(chosen -> show());
        model.against().watch(against -> show());
    }

    private void show() {
        head.getChildren().clear();
        Optional<EarlierVersionView> version = model.version();
        tuning.setDisable(version.isEmpty());
        whole.setDisable(version.filter(each -> each.version().whole()).isEmpty());
        fillChoice();
        if (version.isEmpty()) {
            rows.getItems().clear();
            return;
        }
        head.getChildren()
                .addAll(
                        kit.text(words.title(version.get()), "heading"),
                        kit.prose(words.origin(version.get()), "muted"));
        List<String> changes = words.changes(version.get());
        if (!changes.isEmpty()) {
            FlowPane differences = new FlowPane(18, 2);
            changes.forEach(change -> differences.getChildren().add(kit.text(change, "earlier-settings")));
            head.getChildren().add(differences);
        }
        TextComparison comparison = model.comparison().orElseThrow();
        rows.getItems().setAll(comparison.rows());
        rest.setText(comparison.rest() == 0 ? "" : kit.words().of("earlier.rest", comparison.rest()));
        rest.setManaged(comparison.rest() > 0);
    }

    /** The present file, and every other version. */
    private void fillChoice() {
        filling = true;
        List<Optional<String>> choices = new ArrayList<>(List.of(Optional.empty()));
        versions().stream()
                .map(EarlierVersionView::sha256)
                .filter(hash -> !model.chosen().get().equals(Optional.of(hash)))
                .forEach(hash -> choices.add(Optional.of(hash)));
        other.getItems().setAll(choices);
        other.setValue(model.against().get());
        filling = false;
    }

    private List<EarlierVersionView> versions() {
        return model.found().get().value().map(EarlierView::versions).orElse(List.of());
    }

    private final class Names extends StringConverter<Optional<String>> {

        @Override
        public String toString(Optional<String> hash) {
            if (hash == null || hash.isEmpty()) {
                return kit.words().of("earlier.now");
            }
            return versions().stream()
                    .filter(version -> version.sha256().equals(hash.get()))
                    .map(words::choice)
                    .findFirst()
                    .orElse("");
        }

        @Override
        public Optional<String> fromString(String text) {
            throw new UnsupportedOperationException("nothing is typed here");
        }
    }

    /** Both lines, each with its number, in two columns of one width. */
    private final class RowCell extends WideCell<TextComparison.Row> {

        private static final double NUMBER = 30;
        private static final double HALF = 43;

        @Override
        protected void updateItem(TextComparison.Row row, boolean empty) {
            super.updateItem(row, empty);
            setText(null);
            if (empty || row == null) {
                setGraphic(null);
                return;
            }
            GridPane grid = new GridPane();
            grid.setHgap(6);
            grid.getColumnConstraints().addAll(number(), half(), number(), half());
            side(grid, 0, row.left(), row.isSame(), "line-after");
            side(grid, 2, row.right(), row.isSame(), "line-before");
            show(grid);
        }

        private void side(GridPane grid, int column, Optional<TextComparison.Side> side, boolean same, String style) {
            side.ifPresent(line -> {
                grid.add(kit.text(Integer.toString(line.number()), "line-number"), column, 0);
                grid.add(kit.text(line.text(), same ? "line-text" : style), column + 1, 0);
            });
        }

        private static ColumnConstraints number() {
            return new ColumnConstraints(NUMBER);
        }

        private static ColumnConstraints half() {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(HALF);
            return column;
        }
    }
}
