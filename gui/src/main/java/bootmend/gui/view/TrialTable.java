package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.gui.model.TrialWords;
import bootmend.gui.model.TrialsModel;
import bootmend.record.TrialListing;
import bootmend.trial.Trial;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.Node;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Every trial of a board, one a row, and the chosen one in full below. */
final class TrialTable extends VBox {

    private final TrialsModel model;
    private final Kit kit;
    private final TrialWords words;
    private final TableView<TrialListing.Listed> table = new TableView<>();
    private final VBox whole = new VBox();

    TrialTable(TrialsModel model, Kit kit) {
        super(10);
        this.model = model;
        this.kit = kit;
        this.words = new TrialWords(kit.words(), ZoneId.systemDefault());
        table.setId("trials");
        table.setAccessibleText(kit.words().of("trials.list"));
        column("trial.column.when", 132, words::when);
        column("trial.column.clock", 58, trial -> words.clock(trial));
        column("trial.column.step", 54, trial -> words.voltage(trial));
        column("trial.column.outcome", 94, trial -> trial.outcome().word());
        column("trial.column.counts", 96, words::counts);
        column(
                "trial.column.minutes",
                54,
                trial -> TrialWords.number(trial.run().minutes()));
        column("trial.column.peak", 62, trial -> TrialWords.number(trial.run().peak()));
        column("trial.column.mask", 82, trial -> TrialWords.mask(trial.run()));
        column("trial.column.cooling", 150, trial -> trial.surroundings().cooling());
        column("trial.column.others", 200, words::others);
        VBox.setVgrow(table, Priority.ALWAYS);
        whole.setId("trial-whole");
        getChildren().addAll(table, whole);
        table.getSelectionModel().selectedItemProperty().addListener((observed, before, listed) -> show(listed));
        model.listing().watch(reading -> fill());
        model.label().watch(label -> fill());
        show(null);
    }

    private void column(String key, double width, Function<Trial, String> text) {
        TableColumn<TrialListing.Listed, String> column =
                new TableColumn<>(kit.words().of(key));
        column.setPrefWidth(width);
        column.setCellValueFactory(row -> new ReadOnlyStringWrapper(
                VisibleText.of(text.apply(row.getValue().trial()))));
        table.getColumns().add(column);
    }

    private void fill() {
        table.getItems().setAll(model.trials());
        show(table.getSelectionModel().getSelectedItem());
    }

    private void show(TrialListing.Listed listed) {
        whole.getChildren()
                .setAll(
                        listed == null
                                ? kit.label("trials.choose", "muted")
                                : kit.prose(words.whole(listed), "notice"));
        List<Node> actions = new ArrayList<>();
        if (listed != null) {
            actions.add(kit.button("trials.delete", () -> model.delete(listed)));
        }
        if (model.canPutBack()) {
            actions.add(kit.button("trials.putback", model::putBack));
        }
        if (!actions.isEmpty()) {
            whole.getChildren().add(Form.row(actions.toArray(Node[]::new)));
        }
    }
}
